package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;
import org.bayhold.calibration.CalibrationMap;
import org.bayhold.calibration.Calibrations;
import org.bayhold.calibration.Revision;
import org.bayhold.support.Body;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the journal and the fold have of a revision's maps. docs/rules.md, "Maps". */
public abstract class MapsOnRecord implements OnADatabase {

    /** Coverage and maps are read in one question: neither may multiply the other. */
    @Test
    void manyPartsAndManyMapsDoNotMixEachOtherUp() {
        List<Part> fuels = List.of(shop().aPartFor("FUEL"), shop().aPartFor("FUEL"), shop().aPartFor("FUEL"));
        List<Part> intakes = List.of(shop().aPartFor("AIR_INTAKE"), shop().aPartFor("AIR_INTAKE"));

        Revision revision = issued(draft().coversOrFactory(fuels.toArray(Part[]::new))
                .covers(intakes.toArray(Part[]::new))
                .withMap("track", fuels.get(2), fuels.get(0))
                .withMap(Body.of("name", "pump").with("factoryFuel", true))
                .withMap("calm"));

        assertThat(revision.coverage()).hasSize(2);
        assertThat(revision.coverage().get(0).partSpecIds()).containsExactlyElementsOf(ids(fuels));
        assertThat(revision.coverage().get(1).partSpecIds()).containsExactlyElementsOf(ids(intakes));
        assertThat(revision.maps())
                .containsExactly(
                        new CalibrationMap("track", ids(List.of(fuels.get(2), fuels.get(0))), false),
                        new CalibrationMap("pump", List.of(), true),
                        new CalibrationMap("calm", List.of(), false));
    }

    @ParameterizedTest
    @CsvSource({"COMPRESSION, true", "SPARK, false"})
    void whatIgnitesIsReadFromWhatTheRevisionAssumes(String ignition, boolean compression) {
        Revision revision = issued(draft().with("assumes", Body.of("ignition", ignition)));

        assertThat(revision.compressionIgnition()).isEqualTo(compression);
        assertThat(issued(draft()).compressionIgnition()).isFalse();
    }

    /** It may name somebody: it stands apart from the record, which nobody changes. */
    @Test
    void theNoteOfAMapDoesNotStandInTheJournal() throws SQLException {
        Revision revision = issued(draft().withMap(Body.of("name", "valet").with("note", "for Odo Marchetti")));

        assertThat(journalled(revision)).contains("\"maps\":[", "valet").doesNotContain("Marchetti");
    }

    /** So that its entry is, to the byte, what it was before there were maps. */
    @Test
    void aRevisionWithoutMapsSaysNothingOfThemInTheJournal() throws SQLException {
        for (RevisionDraft draft : List.of(draft(), draft().with("maps", List.of()))) {
            assertThat(journalled(issued(draft))).contains("\"coverage\":").doesNotContain("\"maps\"");
        }
    }

    private static RevisionDraft draft() {
        return RevisionDraft.forEcu("HW-MAPS");
    }

    private Revision issued(RevisionDraft draft) {
        UUID id = UUID.fromString(shop().issues(draft).id());
        return running().bean(Calibrations.class).revision(id).orElseThrow();
    }

    private String journalled(Revision revision) throws SQLException {
        try (Connection connection = running().connect();
                PreparedStatement select =
                        connection.prepareStatement("select body from journal_entry where chain_id = ?")) {
            select.setObject(1, revision.id());
            try (ResultSet entry = select.executeQuery()) {
                assertThat(entry.next()).isTrue();
                return entry.getString(1);
            }
        }
    }

    private static List<UUID> ids(List<Part> parts) {
        return parts.stream().map(part -> UUID.fromString(part.id())).toList();
    }
}
