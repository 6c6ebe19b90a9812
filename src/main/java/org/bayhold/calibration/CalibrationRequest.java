package org.bayhold.calibration;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.catalog.Category;
import org.jspecify.annotations.Nullable;

/** A revision to issue. */
record CalibrationRequest(
        @NotBlank @Size(max = 100) String name,
        @NotBlank @Size(max = 40) String revision,
        @NotBlank @Size(max = 64) String ecuHardware,
        @Nullable @Size(min = 1, max = 200) String calid,
        @Nullable @Size(min = 1, max = 200) String cvn,

        @Nullable @Pattern(regexp = "[0-9A-Fa-f]{64}", message = "must be the 64 hex digits of a SHA-256") String fileSha256,

        @Nullable Purpose purpose,
        @Nullable @Size(max = 1000) String limits,
        @NotNull @Size(max = 100) List<@Valid @NotNull Line> coverage,
        @Nullable @Size(max = MapRequest.MOST) List<@Valid @NotNull MapRequest> maps,
        @Nullable Map<String, Object> assumes,
        @Nullable @DecimalMin("0") @DecimalMax("2000") Double boostTargetKpa,
        @Nullable @Size(max = 2000) String note) {

    /** What it was written for at one place. */
    record Line(
            @NotNull Category category,
            @Nullable @Size(max = 60) String position,
            @Nullable @Size(max = 50) List<@NotNull UUID> partSpecIds,
            @Nullable Boolean factoryAllowed,
            @Nullable Boolean noneAllowed) {}
}
