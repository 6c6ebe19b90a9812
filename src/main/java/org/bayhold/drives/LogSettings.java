package org.bayhold.drives;

import java.nio.file.Path;
import org.bayhold.drivelog.ReadRequest;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.util.unit.DataSize;

/**
 * Where logs are kept, outside the database, and how large one may be.
 *
 * @param directory shared by all servers of a shop, and part of its backup
 * @param largest of one file as it is uploaded, {@link ReadRequest#USUAL_LIMIT} where nothing is said
 */
@ConfigurationProperties("bayhold.drive-logs")
record LogSettings(
        @DefaultValue("./data/drive-logs") Path directory,
        @DefaultValue("2GB") DataSize largest) {}
