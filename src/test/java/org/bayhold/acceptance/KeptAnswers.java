package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.about;
import static org.bayhold.support.Facts.proposes;

import java.io.IOException;
import java.util.List;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.bayhold.support.Answer;
import org.bayhold.support.Api;
import org.bayhold.support.Body;
import org.bayhold.support.Car;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.Role;
import org.bayhold.support.Shop;
import org.junit.jupiter.api.Test;

/** What becomes of an answer: it is kept, found, sent as a letter, and planned. docs/rules.md, "Advice". */
public abstract class KeptAnswers implements OnADatabase {
    @Test
    void whatAPartBringsNothingOnIsSaid() {
        Body carBody = aCar().with("engine", "2.0 turbo");
        Car car = shop().registers(carBody);
        Part filter = shop().aPartFor("AIR_FILTER");
        Body note = Body.of("effect", "BRINGS_NOTHING")
                .with("engine", "2.0  Turbo")
                .with("note", "The factory box flows more than this engine takes.");
        shop().as(Role.WRITER)
                .post("/part-specs/" + filter.id() + "/benefit-notes", note)
                .is(403);
        shop().as(Role.CALIBRATOR)
                .post("/part-specs/" + filter.id() + "/benefit-notes", note)
                .is(201);

        String thoughts = shop().asks(about(car).plus("proposed", proposes(filter)))
                .json()
                .path("secondThoughts")
                .toString();
        assertThat(thoughts).contains("brings nothing on this car", "factory box flows more", "leave the car as it is");

        shop().as(Role.CALIBRATOR)
                .post("/part-specs/" + filter.id() + "/benefit-notes", note.with("effect", "NO_OBJECTION"))
                .is(201);
        assertThat(shop().asks(about(car).plus("proposed", proposes(filter)))
                        .json()
                        .path("secondThoughts")
                        .toString())
                .doesNotContain("brings nothing");
        assertThat(shop().as(Role.WRITER).list("/part-specs/" + filter.id() + "/benefit-notes"))
                .isEmpty();
    }

    @Test
    void answersAreKeptAndFound() {
        Car car = shop().aCarCalibratedFor(shop().injectors(440));
        Part wanted = shop().injectors(650);
        String word = "quokka" + UUID.randomUUID();
        Answer asked = shop().asks(about(car)
                .plus("proposed", proposes(wanted))
                .with("question", "May I run the big " + word + "?")
                .with("askedBy", "Ines Okoro"));

        Api writer = shop().as(Role.WRITER);
        assertThat(writer.get("/advice/" + asked.id()).is(200).json()).isEqualTo(asked.json());
        for (String text : List.of(word, wanted.partNumber(), car.vin())) {
            assertThat(writer.list("/advice?vehicleId=" + car.id() + "&q=" + Shop.encoded(text)))
                    .as(text)
                    .hasSize(1);
        }
        assertThat(writer.list("/advice?q=" + word)).hasSize(1);
        assertThat(writer.list("/advice?vehicleId=" + car.id() + "&q=nothing-like-it"))
                .isEmpty();
        assertThat(asked.field("letter")).contains("You asked: May I run the big " + word);
    }

    @Test
    void theLetterIsAPdfThatSaysTheSame() throws IOException {
        Car car = shop().aCarCalibratedFor(shop().injectors(440));
        Answer asked = shop().asks(about(car)
                .plus("proposed", proposes(shop().injectors(650)))
                .with("question", "Геннадий & Søren <b>ask</b>: Ωmega?"));
        Api writer = shop().as(Role.WRITER);

        byte[] pdf = writer.withHeader("Accept", "application/pdf").download("/advice/" + asked.id() + "/letter");
        String read;
        try (PDDocument document = Loader.loadPDF(pdf)) {
            read = new PDFTextStripper().getText(document);
        }
        assertThat(words(read)).contains(words("You asked: Геннадий & Søren <b>ask</b>: Ωmega?"));
        asked.field("letter")
                .lines()
                .forEach(line -> assertThat(words(read)).contains(words(line.replaceFirst("^- ", ""))));
    }

    @Test
    void anAnswerBecomesPlannedWorkUntilItIsDroppedOnce() {
        Car car = shop().aCarCalibratedFor(shop().injectors(440));
        Answer asked = shop().asks(about(car).plus("proposed", proposes(shop().injectors(650))));
        Api writer = shop().as(Role.WRITER);
        String plan = "/advice/" + asked.id() + "/planned-work";

        writer.post(plan, "{}").is(201);
        assertThat(writer.get("/advice/" + asked.id()).json().path("planned").isNull())
                .isFalse();
        writer.post(plan, "{}").isProblem(409, "conflict");
        writer.post(plan + "/dropping", "{}").is(200);
        writer.post(plan + "/dropping", "{}").isProblem(409, "conflict");
        assertThat(writer.get("/advice/" + asked.id()).json().path("planned").isNull())
                .isTrue();

        Answer stranger = shop().asks(Body.of("ecuHardware", "ZZ-1").plus("proposed", proposes(shop().injectors(440))));
        writer.post("/advice/" + stranger.id() + "/planned-work", "{}").isProblem(409, "conflict");
    }

    /** Whatever the lines are broken at. */
    private static String words(String text) {
        return text.replaceAll("\\s+", "");
    }
}
