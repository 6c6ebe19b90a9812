package org.bayhold.drives;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.bayhold.drivelog.AnyDrive;
import org.bayhold.drivelog.Judgement;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.drivelog.TrimMap;
import org.bayhold.page.Units;
import org.bayhold.support.Seed;
import org.junit.jupiter.api.Test;

/** The pictures of a log as HTML: whatever was judged, there is one, and it says what is not there. */
class LogPicturesTest {
    static final String PAGE =
            "<main><svg th:replace=\"~{prediction :: patterns}\"></svg><section th:replace=\"~{drives/pictures :: pictures(${p}, 'log')}\"></section></main>";
    static final String PAPER =
            "<main><section th:replace=\"~{drives/pictures :: paper(${p}, 'log')}\"></section></main>";
    private static final LogDrawing DRAWING = new LogDrawing(Rendered.messages());
    private static final Pattern ID = Pattern.compile(" id=\"([^\"]*)\"");
    private static final Pattern NAMED = Pattern.compile(" aria-(?:labelledby|describedby)=\"([^\"]*)\"");

    private final long seed = Seed.OF_THIS_RUN;
    private final Rendered rendered = new Rendered();

    @Test
    void anyDriveHasItsPictures() {
        for (long n = seed; n < seed + 40; n++) {
            Judgement judgement = AnyDrive.judged(n);
            Units units = n % 2 == 0 ? Units.METRIC : Units.IMPERIAL;
            LogPictures pictures = draw(judgement, units);
            assertThat(pictures.trims() == null)
                    .isEqualTo(judgement.trims().cells().isEmpty());
            assertThat(pictures.error() == null).isEqualTo(judgement.fit() == null);
            assertThat(pictures.pulls() == null).isEqualTo(judgement.pulls().isEmpty());
            assertSound(rendered.of(PAGE, Map.of("p", pictures)), n);
            assertSound(rendered.of(PAPER, Map.of("p", pictures)), n);
        }
    }

    @Test
    void theOddestPartsHaveThemToo() {
        for (long n = seed; n < seed + 30; n++) {
            SplittableRandom random = new SplittableRandom(n);
            LogPictures pictures = new LogPictures(
                    TrimMapPicture.of(AnyLog.map(random), Thresholds.DEFAULTS, Units.IMPERIAL, AnyLog.WORDS),
                    ErrorPicture.of(AnyLog.fit(random), 25, Units.IMPERIAL, AnyLog.WORDS),
                    PullPictures.of(
                            AnyLog.pulls(random, random.nextInt(65)),
                            Thresholds.DEFAULTS,
                            random.nextBoolean() ? null : 180.0,
                            Units.IMPERIAL,
                            AnyLog.WORDS));
            assertSound(rendered.of(PAGE, Map.of("p", pictures)), n);
        }
    }

    @Test
    void whatIsNotThereIsSaid() {
        LogPictures nothing = new LogPictures(
                TrimMapPicture.of(new TrimMap(null, List.of()), Thresholds.DEFAULTS, Units.METRIC, AnyLog.WORDS),
                ErrorPicture.of(null, 25, Units.METRIC, AnyLog.WORDS),
                PullPictures.of(List.of(), Thresholds.DEFAULTS, null, Units.METRIC, AnyLog.WORDS));
        assertThat(rendered.of(PAGE, Map.of("p", nothing)))
                .contains("There is no map of the corrections")
                .contains("The correction is not drawn against the airflow")
                .contains("There was no acceleration at full load")
                .doesNotContain("<figure");
    }

    /** A table is folded below its picture on a page, follows all of them on paper, and a picture may stand alone. */
    @Test
    void tablesGoWithPictures() {
        LogPictures pictures = draw(AnyDrive.complete(seed, 1), Units.METRIC);
        String page = rendered.of(PAGE, Map.of("p", pictures));
        String paper = rendered.of(PAPER, Map.of("p", pictures));
        String alone = rendered.of(
                "<main th:with=\"of=${p.trims}\"><figure th:replace=\"~{drives/pictures :: map(${of}, 'log', 'none')}\"></figure></main>",
                Map.of("p", pictures));
        assertThat(page).contains("<details>").contains("</table>").contains("<svg");
        assertThat(paper).doesNotContain("<details>").contains("</table>").contains("id=\"p-rich\"");
        assertThat(alone).contains("<svg").doesNotContain("<table").doesNotContain("table below");
    }

    static LogPictures draw(Judgement judgement, Units units) {
        return DRAWING.of(new Judged(AnyDrive.ENGINE, Thresholds.DEFAULTS, judgement), units);
    }

    private static void assertSound(String html, long n) {
        assertThat(html)
                .as(Seed.repeats(n))
                .doesNotContain("NaN")
                .doesNotContain("Infinity")
                .doesNotContain("null")
                .doesNotContain("th:")
                .doesNotContain("??");
        List<String> ids =
                ID.matcher(html).results().map(found -> found.group(1)).toList();
        assertThat(ids).as(Seed.repeats(n)).doesNotHaveDuplicates();
        assertThat(NAMED.matcher(html).results().map((MatchResult found) -> found.group(1)))
                .as(Seed.repeats(n))
                .allMatch(ids::contains);
    }
}
