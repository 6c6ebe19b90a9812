package org.bayhold.obd;

import org.jspecify.annotations.Nullable;

/**
 * Puts the frames of one ECU together (ISO 15765-2, classic CAN, the receiving side). A message with a wrong or missing
 * frame is given up, never patched: half of one calibration id and half of another would name software nobody wrote.
 */
final class IsoTp {
    private static final int FRAME = 8;

    private final Findings findings;
    private byte @Nullable [] payload;
    private int filled;
    private int next;
    private int begin;
    /** The frames that come belong to a message that was given up. */
    private boolean givenUp;

    IsoTp(Findings findings) {
        this.findings = findings;
    }

    void accept(Message frame) throws UndecodableException {
        if (frame.size() > FRAME) {
            throw new UndecodableException(Flaw.LONG_FRAME, frame.line());
        }
        switch (frame.at(0) >> 4) {
            case 0 -> single(frame);
            case 1 -> first(frame);
            case 2 -> consecutive(frame);
            default -> {
                // flow control, the tester's part of the talk
            }
        }
    }

    void end(@Nullable String id) {
        giveUp(id, begin, Flaw.UNFINISHED);
    }

    private void single(Message frame) throws UndecodableException {
        int length = frame.at(0) & 0xF;
        if (length == 0 || length >= FRAME) {
            return;
        }
        giveUp(frame.id(), begin, Flaw.UNFINISHED);
        if (frame.size() <= length) {
            payload = frame.slice(1, frame.size());
            giveUp(frame.id(), frame.line(), Flaw.SHORT_FRAME);
            return;
        }
        givenUp = false;
        findings.payload(new Message(frame.line(), frame.id(), frame.slice(1, 1 + length)));
    }

    private void first(Message frame) {
        int length = frame.size() < 2 ? FRAME : (frame.at(0) & 0xF) << 8 | frame.at(1);
        if (length < FRAME) {
            return;
        }
        giveUp(frame.id(), begin, Flaw.UNFINISHED);
        if (frame.size() < FRAME) {
            payload = frame.slice(Math.min(2, frame.size()), frame.size());
            giveUp(frame.id(), frame.line(), Flaw.SHORT_FRAME);
            return;
        }
        givenUp = false;
        payload = new byte[length];
        System.arraycopy(frame.slice(2, FRAME), 0, payload, 0, FRAME - 2);
        filled = FRAME - 2;
        next = 1;
        begin = frame.line();
    }

    private void consecutive(Message frame) throws UndecodableException {
        byte[] receiving = payload;
        if (receiving == null) {
            if (!givenUp) {
                findings.orphan(frame);
            }
            return;
        }
        if ((frame.at(0) & 0xF) != next) {
            giveUp(frame.id(), frame.line(), Flaw.WRONG_SEQUENCE);
            return;
        }
        // the last frame is padded; what lies beyond the announced length is no data
        int count = Math.min(FRAME - 1, receiving.length - filled);
        if (frame.size() <= count) {
            giveUp(frame.id(), frame.line(), Flaw.SHORT_FRAME);
            return;
        }
        System.arraycopy(frame.slice(1, 1 + count), 0, receiving, filled, count);
        filled += count;
        next = (next + 1) & 0xF;
        if (filled == receiving.length) {
            payload = null;
            findings.payload(new Message(begin, frame.id(), receiving));
        }
    }

    private void giveUp(@Nullable String id, int line, Flaw flaw) {
        byte[] lost = payload;
        payload = null;
        givenUp |= lost != null;
        if (lost != null && lost.length > 0) {
            findings.giveUp(new Message(line, id, lost), line, flaw);
        }
    }
}
