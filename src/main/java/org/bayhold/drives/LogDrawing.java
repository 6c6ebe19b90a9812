package org.bayhold.drives;

import java.util.Locale;
import org.bayhold.drivelog.EngineFacts;
import org.bayhold.drivelog.Judgement;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.page.Units;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** Draws what was judged. */
@Component
public class LogDrawing {
    private final MessageSource messages;

    LogDrawing(MessageSource messages) {
        this.messages = messages;
    }

    /** @param units in which it is read */
    public LogPictures of(Judged judged, Units units) {
        Words words = (key, arguments) -> messages.getMessage(key, arguments, Locale.ENGLISH);
        Judgement judgement = judged.judgement();
        Thresholds thresholds = judged.thresholds();
        EngineFacts engine = judged.engine();
        return new LogPictures(
                TrimMapPicture.of(judgement.trims(), thresholds, units, words),
                ErrorPicture.of(judgement.fit(), engine.trimAuthorityPercent(), units, words),
                PullPictures.of(judgement.pulls(), thresholds, engine.boostTargetKpa(), units, words));
    }
}
