package org.bayhold.drives;

import org.jspecify.annotations.Nullable;

/**
 * What a page or a paper shows of a judged log: {@code templates/drives/pictures.html}.
 *
 * @param trims null where the engine was never steady
 * @param error null where nothing could be fitted
 * @param pulls null where there was none
 */
public record LogPictures(
        @Nullable TrimMapPicture trims,
        @Nullable ErrorPicture error,
        @Nullable PullPictures pulls) {}
