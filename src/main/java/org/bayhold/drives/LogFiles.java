package org.bayhold.drives;

import java.io.BufferedInputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/**
 * The files of logged drives, each under the SHA-256 of what was uploaded, compressed. A file first waits; only a drive that
 * is put on record is kept, and that is on the disk before the record says so. Nothing that is kept is ever changed or
 * removed here. docs/decisions/0014-drives.md.
 */
@Component
class LogFiles {
    private static final Logger LOG = LoggerFactory.getLogger(LogFiles.class);

    /** A file that waits so long was forgotten. */
    private static final Duration WAITS = Duration.ofHours(24);

    private static final String SHA_256 = "[0-9a-f]{64}";
    private static final int BUFFER = 64 * 1024;

    private final Path waiting;
    private final Path kept;
    private final long largest;
    private final Clock clock;

    LogFiles(LogSettings settings, Clock clock) {
        this.waiting = settings.directory().resolve("waiting");
        this.kept = settings.directory().resolve("kept");
        this.largest = settings.largest().toBytes();
        this.clock = clock;
    }

    /**
     * A file as it was uploaded.
     *
     * @param bytes as long as it was
     */
    record Uploaded(String sha256, long bytes) {}

    /** @throws Refusal TOO_LARGE for more than may be uploaded; then nothing of it is left */
    Uploaded receive(InputStream in) {
        forget();
        try {
            Files.createDirectories(waiting);
            Path part = waiting.resolve(UUID.randomUUID() + ".part");
            try {
                Uploaded uploaded = write(in, part);
                Files.move(part, waiting(uploaded.sha256()), StandardCopyOption.ATOMIC_MOVE);
                return uploaded;
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (IOException failed) {
            throw unavailable(failed);
        }
    }

    private Uploaded write(InputStream in, Path part) throws IOException {
        MessageDigest digest = sha256();
        long bytes = 0;
        try (FileChannel file = FileChannel.open(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            try (OutputStream out = new DigestOutputStream(
                    new GZIPOutputStream(new Unclosed(java.nio.channels.Channels.newOutputStream(file)), BUFFER),
                    digest)) {
                byte[] buffer = new byte[BUFFER];
                for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                    bytes += read;
                    if (bytes > largest) {
                        throw Refusal.of(Code.TOO_LARGE, "drive-log.too-large", largest >> 20);
                    }
                    out.write(buffer, 0, read);
                }
            }
            file.force(true);
        }
        return new Uploaded(HexFormat.of().formatHex(digest.digest()), bytes);
    }

    /** Keeps a file that waits; one that is kept already stays as it is. On the disk when this returns. */
    void keep(String sha256) {
        try {
            Path shelf = shelf(sha256);
            Files.createDirectories(shelf);
            move(sha256);
            // also where somebody else moved it: it may not be on the disk yet
            force(shelf);
            force(kept);
        } catch (NoSuchFileException gone) {
            throw Refusal.notFound("drive-log.file-gone");
        } catch (IOException failed) {
            throw unavailable(failed);
        }
    }

    private void move(String sha256) throws IOException {
        if (isKept(sha256)) {
            return;
        }
        try {
            Files.move(waiting(sha256), kept(sha256), StandardCopyOption.ATOMIC_MOVE);
        } catch (NoSuchFileException gone) {
            if (!isKept(sha256)) {
                throw gone;
            }
        }
    }

    /** The file as it was uploaded, kept or waiting. */
    InputStream open(String sha256) {
        try {
            return new GZIPInputStream(new BufferedInputStream(stored(sha256), BUFFER), BUFFER);
        } catch (NoSuchFileException gone) {
            throw Refusal.notFound("drive-log.file-gone");
        } catch (IOException failed) {
            throw unavailable(failed);
        }
    }

    private InputStream stored(String sha256) throws IOException {
        try {
            return Files.newInputStream(Files.exists(kept(sha256)) ? kept(sha256) : waiting(sha256));
        } catch (NoSuchFileException moved) {
            return Files.newInputStream(kept(sha256));
        }
    }

    /** How long the file is, as its compressed form says: of one beyond 4 GiB, what is beyond. */
    long bytes(String sha256) {
        Path path = isKept(sha256) ? kept(sha256) : waiting(sha256);
        try (FileChannel file = FileChannel.open(path, StandardOpenOption.READ)) {
            ByteBuffer tail = ByteBuffer.allocate(Integer.BYTES).order(ByteOrder.LITTLE_ENDIAN);
            while (tail.hasRemaining() && file.read(tail, file.size() - tail.remaining()) > 0) {}
            return Integer.toUnsignedLong(tail.getInt(0));
        } catch (NoSuchFileException gone) {
            throw Refusal.notFound("drive-log.file-gone");
        } catch (IOException failed) {
            throw unavailable(failed);
        }
    }

    boolean isKept(String sha256) {
        return Files.isRegularFile(kept(sha256), LinkOption.NOFOLLOW_LINKS);
    }

    /** Removes one that waits and will not be asked for again. */
    void drop(String sha256) {
        try {
            Files.deleteIfExists(waiting(sha256));
        } catch (IOException stays) {
            LOG.warn("a file that waits could not be removed", stays);
        }
    }

    /** Files that wait no longer: nobody put them on record. */
    private void forget() {
        Instant before = clock.instant().minus(WAITS);
        if (!Files.isDirectory(waiting)) {
            return;
        }
        try (Stream<Path> files = Files.list(waiting)) {
            for (Path file : (Iterable<Path>) files::iterator) {
                if (isOlder(file, before)) {
                    Files.deleteIfExists(file);
                }
            }
        } catch (IOException stays) {
            LOG.warn("files that wait no longer could not be removed", stays);
        }
    }

    private static boolean isOlder(Path file, Instant before) throws IOException {
        try {
            return Files.getLastModifiedTime(file).toInstant().isBefore(before);
        } catch (NoSuchFileException gone) {
            return false;
        }
    }

    private Path waiting(String sha256) {
        return waiting.resolve(checked(sha256) + ".gz");
    }

    private Path kept(String sha256) {
        return shelf(sha256).resolve(sha256 + ".gz");
    }

    private Path shelf(String sha256) {
        return kept.resolve(checked(sha256).substring(0, 2));
    }

    /** It becomes part of a path. */
    private static String checked(String sha256) {
        return Optional.of(sha256)
                .filter(text -> text.matches(SHA_256))
                .orElseThrow(() -> Refusal.notFound("drive-log.file-gone"));
    }

    /** A directory's entry is on the disk only when the directory is. */
    private static void force(Path directory) throws IOException {
        try (FileChannel channel = FileChannel.open(directory, StandardOpenOption.READ)) {
            channel.force(true);
        }
    }

    private static Refusal unavailable(IOException failed) {
        LOG.error("the files of drives cannot be read or written", failed);
        return Refusal.of(Code.UNAVAILABLE, "drive-log.files-unavailable");
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /** The channel is closed by who opened it, after it was forced. */
    private static final class Unclosed extends FilterOutputStream {
        Unclosed(OutputStream out) {
            super(out);
        }

        @Override
        public void write(byte[] bytes, int from, int length) throws IOException {
            out.write(bytes, from, length);
        }

        @Override
        public void close() throws IOException {
            flush();
        }
    }
}
