package org.bayhold.advice;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.UUID;
import org.bayhold.buildsheet.Fact.Action;
import org.bayhold.buildsheet.Fitted;
import org.bayhold.catalog.Category;
import org.jspecify.annotations.Nullable;

/**
 * A question. It is about a car of the register, or about one that is described by its ECU hardware and what is on it.
 *
 * @param parts what is on a car that is not in the register; what is not named is the factory's
 * @param proposed what somebody would like to change
 * @param calibrationId null for the calibration that is in the ECU
 * @param question as it was asked
 * @param askedBy who asked
 */
record AdviceRequest(
        @Nullable UUID vehicleId,
        @Nullable @Size(max = 64) String ecuHardware,
        @Nullable @Size(max = 60) List<@NotNull @Valid FittedPart> parts,
        @Nullable @Size(max = 30) List<@NotNull @Valid Proposed> proposed,
        @Nullable UUID calibrationId,
        @Nullable @Size(max = 2000) String question,
        @Nullable @Size(max = 200) String askedBy) {
    List<FittedPart> onTheCar() {
        return parts == null ? List.of() : parts;
    }

    List<Proposed> changes() {
        return proposed == null ? List.of() : proposed;
    }

    /**
     * What is on a car.
     *
     * @param category may be left out where a part tells it
     * @param state null means PART where a part is named, else UNKNOWN
     */
    record FittedPart(
            @Nullable Category category,
            @Nullable @Size(max = 60) String position,
            Fitted.@Nullable State state,
            @Nullable UUID partSpecId) {}

    /**
     * A change that somebody would like.
     *
     * @param category may be left out where a part tells it
     * @param partSpecId null on FIT means a part that the catalogue does not know
     */
    record Proposed(
            @Nullable Category category,
            @Nullable @Size(max = 60) String position,
            @NotNull Action action,
            @Nullable UUID partSpecId,
            @Nullable @Size(max = 64) String ecuHardware) {}
}
