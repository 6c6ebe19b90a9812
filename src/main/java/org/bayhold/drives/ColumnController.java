package org.bayhold.drives;

import java.util.LinkedHashMap;
import java.util.Map;
import org.bayhold.drivelog.MappedColumn;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Needs;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.JsonNode;

/** What columns of logs hold, as the whole shop reads them, over HTTP. */
@RestController
@RequestMapping("/api/v1/drive-log-columns")
class ColumnController {
    private final ColumnMeanings meanings;
    private final SaidColumns columns;

    ColumnController(ColumnMeanings meanings, SaidColumns columns) {
        this.meanings = meanings;
        this.columns = columns;
    }

    /** By heading. */
    record Known(Map<String, MappedColumn> columns) {}

    @Needs(Act.READ)
    @GetMapping
    Known all() {
        return new Known(new LinkedHashMap<>(meanings.all()));
    }

    /** Headings that are left out keep their meaning. */
    @Needs(Act.ISSUE_CALIBRATION)
    @PutMapping
    Known tell(Call call, @RequestBody JsonNode said) {
        meanings.tell(call, columns.of(said));
        return all();
    }
}
