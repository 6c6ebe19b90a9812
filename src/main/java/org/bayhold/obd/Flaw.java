package org.bayhold.obd;

/** What can be wrong with the text of an ECU's answers. The sentence is plain English for whoever pasted the text. */
public enum Flaw {
    TOO_LONG("The text is longer than 65,536 characters or 2,000 lines."),
    NOT_HEX("This is not a CAN id of a diagnostic message and bytes in hex."),
    LONG_FRAME("A classic CAN frame has at most 8 bytes."),
    SHORT_FRAME("The frame ends before the bytes it announces."),
    WRONG_SEQUENCE("Another frame of the message was expected here: one is missing, doubled or out of order."),
    UNFINISHED("The message that begins here never ends, or another begins before its end."),
    CHECKSUM("The checksum of the message is wrong."),
    SHORT_ANSWER("The answer ends before the items it announces."),
    CODE_COUNT("The answer holds more trouble codes than it announces."),
    UNPRINTABLE("A VIN or calibration id holds bytes that are no printable characters."),
    REFUSED("The ECU refuses the request."),
    CONTRADICTION(
            "This answer contradicts an earlier one of the same ECU; answers of several ECUs need their CAN ids."),
    NO_ANSWER("The text holds no VIN, calibration id or CVN answer of service 09, no trouble codes and no monitors.");

    private final String sentence;

    Flaw(String sentence) {
        this.sentence = sentence;
    }

    public String sentence() {
        return sentence;
    }
}
