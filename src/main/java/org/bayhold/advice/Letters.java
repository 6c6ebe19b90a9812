package org.bayhold.advice;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bayhold.advice.AdviceBody.Named;
import org.bayhold.advice.AdviceBody.Near;
import org.bayhold.advice.Letter.Section;
import org.bayhold.identity.Caller;
import org.bayhold.page.SiteSettings;
import org.bayhold.page.SiteTime;
import org.bayhold.vehicle.VehicleView;
import org.bayhold.vehicle.Vehicles;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Makes letters of answers, in plain words. */
@Component
class Letters {
    private final AdviceWords words;
    private final Vehicles vehicles;
    private final SiteTime time;
    private final SiteSettings site;

    Letters(AdviceWords words, Vehicles vehicles, SiteTime time, SiteSettings site) {
        this.words = words;
        this.vehicles = vehicles;
        this.time = time;
        this.site = site;
    }

    Letter of(
            AdviceBody body,
            @Nullable UUID vehicleId,
            @Nullable String question,
            Instant at,
            String by,
            Caller caller) {
        List<String> about = new ArrayList<>();
        about.add(car(body, vehicleId, caller));
        about.add(words.message(
                "advice.letter.calibration",
                body.calibration() == null
                        ? words.message("car.in-ecu." + body.software().name())
                        : name(body.calibration())));
        body.proposed().forEach(change -> about.add(words.change(change)));
        return new Letter(
                words.message("advice.letter.title"),
                Stream.of(site.name(), by, time.date(at))
                        .filter(part -> !part.isBlank())
                        .collect(Collectors.joining(" · ")),
                about,
                question == null ? null : words.message("advice.letter.asked", question),
                words.message("advice.letter.answer." + body.answer().name()),
                sections(body),
                words.message("advice.letter.closing"));
    }

    private String car(AdviceBody body, @Nullable UUID vehicleId, Caller caller) {
        if (vehicleId == null) {
            return words.message("advice.letter.described", body.ecuHardware());
        }
        return vehicles.view(vehicleId, caller).map(Letters::car).orElse("");
    }

    private static String car(VehicleView car) {
        String number = car.plate() != null ? car.plate() : car.vin() != null ? car.vin() : car.frameNumber();
        return number == null ? car.description() : car.description() + ", " + number;
    }

    private List<Section> sections(AdviceBody body) {
        List<Section> sections = new ArrayList<>();
        add(sections, "advice.letter.why", body.reasons());
        if (body.prediction() != null && body.answer() != Answer.COVERED) {
            add(sections, "advice.letter.what-happens", body.prediction().sentences());
        }
        if (body.answer() != Answer.COVERED) {
            add(sections, "advice.letter.what-it-takes", whatItTakes(body));
        }
        add(sections, "advice.letter.before", body.secondThoughts());
        add(sections, "advice.letter.care", body.cautions());
        return sections;
    }

    private void add(List<Section> sections, String heading, List<String> sentences) {
        if (!sentences.isEmpty()) {
            sections.add(new Section(words.message(heading), sentences));
        }
    }

    private List<String> whatItTakes(AdviceBody body) {
        List<String> takes = new ArrayList<>();
        if (body.answer() == Answer.UNKNOWN_PARTS) {
            takes.add(words.message("advice.takes.inspection"));
        }
        for (Named covering : body.coveringCalibrations()) {
            takes.add(words.message("advice.takes.flash", name(covering)));
        }
        if (body.coveringCalibrations().isEmpty() && body.answer() == Answer.RETUNE_FIRST) {
            takes.add(words.message("advice.takes.write"));
        }
        body.nearestCalibrations().forEach(near -> takes.add(near(near)));
        return takes;
    }

    private String near(Near near) {
        return words.message(
                "advice.takes.nearest",
                name(near.calibration()),
                near.lacks().stream()
                        .map(lack -> words.place(lack.category(), lack.position()))
                        .collect(Collectors.joining(", ")));
    }

    private static String name(Named calibration) {
        return calibration.name() + " " + calibration.revision();
    }
}
