package org.bayhold.drives;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.util.unit.DataSize;

/** docs/decisions/0014-drives.md: files wait, then are kept, and nothing that is kept changes. */
class LogFilesTest {
    /** FIPS 180-2, B.1: the SHA-256 of "abc". */
    private static final String ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    @TempDir
    Path directory;

    private LogFiles files;

    @BeforeEach
    void empty() {
        files = allowing(DataSize.ofMegabytes(1));
    }

    private LogFiles allowing(DataSize largest) {
        return new LogFiles(new LogSettings(directory, largest), Clock.systemUTC());
    }

    private static InputStream of(String text) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    }

    private String read(String sha256) throws IOException {
        try (InputStream in = files.open(sha256)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private List<Path> onDisk() throws IOException {
        try (Stream<Path> all = Files.walk(directory)) {
            return all.filter(Files::isRegularFile).sorted().toList();
        }
    }

    @Test
    void aFileIsFoundUnderItsHash() throws IOException {
        LogFiles.Uploaded uploaded = files.receive(of("abc"));

        assertThat(uploaded).isEqualTo(new LogFiles.Uploaded(ABC, 3));
        assertThat(read(ABC)).isEqualTo("abc");
        assertThat(files.bytes(ABC)).isEqualTo(3);
        assertThat(files.isKept(ABC)).isFalse();
    }

    @Test
    void whatIsKeptIsCompressedAndAnybodyCanRead() throws IOException {
        files.receive(of("abc".repeat(10_000)));
        String sha256 = files.receive(of("abc".repeat(10_000))).sha256();

        files.keep(sha256);
        files.keep(sha256);

        assertThat(files.isKept(sha256)).isTrue();
        Path only = onDisk().get(0);
        assertThat(onDisk()).hasSize(1);
        assertThat(Files.size(only)).isLessThan(1_000);
        try (InputStream in = new GZIPInputStream(Files.newInputStream(only))) {
            assertThat(in.readAllBytes()).hasSize(30_000);
        }
    }

    @Test
    void whatIsKeptIsNeitherDroppedNorChangedByTheSameFileAgain() throws IOException {
        files.receive(of("abc"));
        files.keep(ABC);
        Path kept = onDisk().get(0);
        byte[] before = Files.readAllBytes(kept);

        files.drop(ABC);
        files.receive(of("abc"));
        files.keep(ABC);
        files.drop(ABC);

        assertThat(onDisk()).containsExactly(kept);
        assertThat(Files.readAllBytes(kept)).isEqualTo(before);
        assertThat(read(ABC)).isEqualTo("abc");
    }

    @Test
    void ofOneThatIsTooLargeNothingIsLeft() throws IOException {
        files = allowing(DataSize.ofBytes(1 << 20));
        String largest = "x".repeat(1 << 20);
        assertThat(files.receive(of(largest)).bytes()).isEqualTo(1 << 20);
        List<Path> before = onDisk();

        assertThatThrownBy(() -> files.receive(of(largest + "y")))
                .isInstanceOfSatisfying(
                        Refusal.class, refusal -> assertThat(refusal.code()).isEqualTo(Code.TOO_LARGE));
        assertThat(onDisk()).isEqualTo(before);
    }

    @Test
    void ofOneThatBreaksOffNothingIsLeft() throws IOException {
        InputStream broken = new InputStream() {
            private int left = 100_000;

            @Override
            public int read() throws IOException {
                if (left-- == 0) {
                    throw new IOException("the connection is gone");
                }
                return 'x';
            }
        };

        assertThatThrownBy(() -> files.receive(broken)).isInstanceOf(Refusal.class);
        assertThat(onDisk()).isEmpty();
    }

    @Test
    void whatWaitsForADayIsForgottenAndWhatIsKeptIsNot() throws IOException {
        files.receive(of("abc"));
        files.keep(ABC);
        String waits = files.receive(of("waits")).sha256();
        FileTime yesterday = FileTime.from(Instant.now().minus(Duration.ofHours(25)));
        for (Path file : onDisk()) {
            Files.setLastModifiedTime(file, yesterday);
        }

        String fresh = files.receive(of("fresh")).sha256();

        assertThat(read(ABC)).isEqualTo("abc");
        assertThat(read(fresh)).isEqualTo("fresh");
        assertThatThrownBy(() -> files.open(waits))
                .isInstanceOfSatisfying(
                        Refusal.class, refusal -> assertThat(refusal.code()).isEqualTo(Code.NOT_FOUND));
        assertThatThrownBy(() -> files.keep(waits)).isInstanceOf(Refusal.class);
    }

    @Test
    void nothingButAHashIsAName() {
        for (String name : List.of("", "../kept", "A".repeat(64), ABC + "/", ABC.toUpperCase(java.util.Locale.ROOT))) {
            assertThatThrownBy(() -> files.open(name)).as(name).isInstanceOf(Refusal.class);
            assertThatThrownBy(() -> files.keep(name)).as(name).isInstanceOf(Refusal.class);
            assertThatThrownBy(() -> files.drop(name)).as(name).isInstanceOf(Refusal.class);
        }
    }

    /** Many send and keep few files at once: each is kept once and whole, whoever was faster. */
    @Test
    void manyAtOnce() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(8);
        try {
            List<Callable<String>> work = new ArrayList<>();
            for (int i = 0; i < 200; i++) {
                String text = text(i % 5);
                work.add(() -> {
                    String sha256 = files.receive(of(text)).sha256();
                    files.keep(sha256);
                    return read(sha256);
                });
            }
            List<Future<String>> done = threads.invokeAll(work);
            for (int i = 0; i < done.size(); i++) {
                assertThat(done.get(i).get().equals(text(i % 5))).isTrue();
            }
        } finally {
            threads.shutdownNow();
        }
        for (int i = 0; i < 5; i++) {
            files.drop(files.receive(of(text(i))).sha256());
        }
        assertThat(onDisk()).hasSize(5);
    }

    private static String text(int seed) {
        StringBuilder text = new StringBuilder();
        new SplittableRandom(seed).ints(20_000).forEach(text::append);
        return text.toString();
    }
}
