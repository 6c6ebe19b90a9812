package org.bayhold.obd;

import java.util.List;
import java.util.SplittableRandom;

/** Texts that people might paste: noise, pieces of answers in any order, and sound answers with a few faults in them. */
final class OddTexts {
    private final SplittableRandom random;
    private final List<String> sound;
    private final List<String> pieces;
    private final int wellFormed;

    /** @param wellFormed how many of the pieces, the first ones, are hex and blanks */
    OddTexts(SplittableRandom random, List<String> sound, List<String> pieces, int wellFormed) {
        this.random = random;
        this.sound = sound;
        this.pieces = pieces;
        this.wellFormed = wellFormed;
    }

    String text(int number) {
        return switch (number % 4) {
            case 0 -> noise();
            case 1 -> pieced();
            default -> mutated();
        };
    }

    private String noise() {
        StringBuilder text = new StringBuilder();
        for (int i = random.nextInt(60); i > 0; i--) {
            text.append((char) random.nextInt(random.nextBoolean() ? 128 : 65_536));
        }
        return text.toString();
    }

    private String pieced() {
        StringBuilder text = new StringBuilder();
        // mostly well-formed lines, so that the bytes get past the reading of hex
        int among = random.nextInt(3) == 0 ? pieces.size() : wellFormed;
        for (int i = random.nextInt(80); i > 0; i--) {
            text.append(pieces.get(random.nextInt(among))).append(random.nextInt(6) == 0 ? '\n' : ' ');
        }
        return text.toString();
    }

    private String mutated() {
        StringBuilder text = new StringBuilder(sound.get(random.nextInt(sound.size())));
        if (random.nextBoolean()) {
            text.append(sound.get(random.nextInt(sound.size())));
        }
        for (int i = random.nextInt(5); i > 0 && text.length() > 0; i--) {
            int at = random.nextInt(text.length());
            switch (random.nextInt(5)) {
                case 0 -> text.deleteCharAt(at);
                case 1 -> text.insert(at, pieces.get(random.nextInt(pieces.size())));
                case 2 -> text.delete(at, Math.min(text.length(), at + random.nextInt(40)));
                case 3 -> text.insert(at, text.substring(0, at));
                default -> text.setCharAt(at, "0123456789ABCDEF".charAt(random.nextInt(16)));
            }
        }
        return text.toString();
    }
}
