package org.bayhold.drivelog;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.function.LongConsumer;

/**
 * Reads a recorded drive once, from its beginning to its end, and judges it. What it needs of memory does not depend on the
 * length of the file. {@code docs/drive-log.md}.
 */
public final class DriveLogs {

    private DriveLogs() {}

    /**
     * @param in is read to its end and not closed
     * @param progress is told the bytes read so far, about once a megabyte
     * @throws RefusedLogException where the file is none, or cannot be judged as one
     * @throws IOException where the stream fails
     */
    public static Judgement judge(
            InputStream in, ReadRequest request, EngineFacts facts, Thresholds thresholds, LongConsumer progress)
            throws IOException, RefusedLogException {
        Drive drive = new Drive(facts, thresholds);
        Quality quality = read(in, request, drive, progress);
        drive.finish();
        return Judging.of(drive, facts, thresholds, quality);
    }

    /**
     * The first rows and what is made of the columns, for a page on which they are mapped. Where nothing is recognised, the
     * first row of the table is taken for its header.
     */
    public static Preview preview(InputStream in, ReadRequest request) throws IOException, RefusedLogException {
        TextSource source = open(in, request, bytes -> {});
        return Previews.of(source, new Recognition(request.columns()));
    }

    private static TextSource open(InputStream in, ReadRequest request, LongConsumer progress)
            throws IOException, RefusedLogException {
        try {
            return TextSource.open(in, request.maxBytes(), progress);
        } catch (CountedBytes.OverTheLimitException over) {
            throw new RefusedLogException(Refused.OVER_THE_LIMIT, 0);
        }
    }

    static Quality read(InputStream in, ReadRequest request, Samples samples, LongConsumer progress)
            throws IOException, RefusedLogException {
        TextSource source = open(in, request, progress);
        Recognition recognition = new Recognition(request.columns());
        Layout layout = new LayoutFinder(recognition, request.sampleSeconds() != null).find(source.head());
        Flaws flaws = new Flaws();
        Double rate = request.sampleSeconds();
        double typical = rate == null || layout.has(Parameter.TIME) ? layout.typicalSeconds() : rate;
        Timeline timeline = new Timeline(typical, flaws);
        Frame frame = new Frame(timeline, flaws, samples);
        RowsHandler rows;
        if (layout.shape() instanceof Shape.Readings readings) {
            rows = new ReadingRows(layout, readings, recognition, frame, flaws);
        } else {
            rows = new SampleRows(layout, layout.columns(), request.sampleSeconds(), frame, flaws);
        }
        pass(source, layout, rows);
        rows.finish();
        if (frame.moments() == 0) {
            throw new RefusedLogException(Refused.NO_ROWS, layout.headerRow());
        }
        List<Flaw> found = flaws.all();
        return new Quality(
                source.bytesRead(),
                frame.moments(),
                timeline.totalSeconds(),
                frame.firstRow(),
                frame.lastRow(),
                source.charset().name(),
                layout.separator(),
                layout.decimal(),
                layout.shape() instanceof Shape.Readings,
                layout.columns(),
                frame.seen(),
                found,
                BadShare.of(found, frame.moments(), timeline.totalSeconds()));
    }

    /** The library wraps what goes wrong in our own hands; a fault of ours must not pass for one of the file. */
    private static RefusedLogException refusal(CsvParseException wrong, long row) {
        if (wrong.getCause() instanceof RowsHandler.TooLongException) {
            return new RefusedLogException(Refused.LINE_TOO_LONG, row);
        }
        if (wrong.getCause() instanceof RuntimeException fault) {
            throw fault;
        }
        return new RefusedLogException(Refused.BROKEN_QUOTES, row);
    }

    private static void pass(TextSource source, Layout layout, RowsHandler rows)
            throws IOException, RefusedLogException {
        try (CsvReader<Boolean> reader = Head.reader(layout.separator()).build(rows, source.reader())) {
            reader.forEach(row -> {});
        } catch (CsvParseException wrong) {
            throw refusal(wrong, rows.row());
        } catch (UncheckedIOException failed) {
            if (failed.getCause() instanceof CountedBytes.OverTheLimitException) {
                throw new RefusedLogException(Refused.OVER_THE_LIMIT, rows.row());
            }
            throw failed.getCause();
        }
    }
}
