package org.bayhold.drives;

import org.bayhold.buildsheet.DriveLogged;
import org.springframework.core.io.InputStreamResource;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;

/** The file of a drive as it was uploaded, to be saved and never shown: it is somebody else's. */
@Component
class LogDownload {
    private static final int NAMED_BY = 12;

    private final LogFiles files;

    LogDownload(LogFiles files) {
        this.files = files;
    }

    ResponseEntity<InputStreamResource> of(DriveLogged log) {
        ContentDisposition saved = ContentDisposition.attachment()
                .filename("drive-log-" + log.fileSha256().substring(0, NAMED_BY) + ".csv")
                .build();
        return ResponseEntity.ok()
                .contentType(new MediaType("text", "csv"))
                .contentLength(log.fileBytes())
                .header(HttpHeaders.CONTENT_DISPOSITION, saved.toString())
                .body(new InputStreamResource(files.open(log.fileSha256())));
    }
}
