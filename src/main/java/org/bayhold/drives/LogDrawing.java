package org.bayhold.drives;

import java.util.Locale;
import org.bayhold.drivelog.Judgement;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.page.Units;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** Draws what was judged. */
@Component
public class LogDrawing {
    private final MessageSource messages;

    LogDrawing(MessageSource messages) {
        this.messages = messages;
    }

    /**
     * @param thresholds that it was judged by
     * @param boostTargetKpa absolute, of the revision; null where none is on record
     * @param authorityPercent by how much the ECU may correct
     * @param units in which it is read
     */
    public LogPictures of(
            Judgement judgement,
            Thresholds thresholds,
            @Nullable Double boostTargetKpa,
            double authorityPercent,
            Units units) {
        Words words = (key, arguments) -> messages.getMessage(key, arguments, Locale.ENGLISH);
        return new LogPictures(
                TrimMapPicture.of(judgement.trims(), thresholds, units, words),
                ErrorPicture.of(judgement.fit(), authorityPercent, units, words),
                PullPictures.of(judgement.pulls(), thresholds, boostTargetKpa, units, words));
    }
}
