package org.bayhold.buildsheet;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** The same fact under another stamp. */
final class Restamp implements Fact.Listener {
    private final Stamp as;
    private @Nullable Fact restamped;

    private Restamp(Stamp as) {
        this.as = as;
    }

    static Fact of(Fact fact, Stamp as) {
        Restamp restamp = new Restamp(as);
        fact.tell(restamp);
        return Objects.requireNonNull(restamp.restamped);
    }

    @Override
    public void arrived(Fact.Arrived fact) {
        restamped = new Fact.Arrived(as, fact.odometerKm(), fact.note());
    }

    @Override
    public void partChanged(Fact.PartChanged fact) {
        restamped = new Fact.PartChanged(
                as,
                fact.place(),
                fact.action(),
                fact.partSpecId(),
                fact.serial(),
                fact.ecuHardware(),
                fact.source(),
                fact.odometerKm(),
                fact.performedBy(),
                fact.note());
    }

    @Override
    public void inspected(Fact.Inspected fact) {
        restamped = new Fact.Inspected(as, fact.lines(), fact.source(), fact.odometerKm(), fact.note());
    }

    @Override
    public void flashed(Fact.Flashed fact) {
        restamped = new Fact.Flashed(
                as,
                fact.calibrationId(),
                fact.outcome(),
                fact.source(),
                fact.adaptationsReset(),
                fact.odometerKm(),
                fact.performedBy(),
                fact.note());
    }

    @Override
    public void readBack(Fact.ReadBack fact) {
        restamped = new Fact.ReadBack(
                as,
                fact.reading(),
                fact.troubleCodes(),
                fact.readiness(),
                fact.source(),
                fact.performedBy(),
                fact.note());
    }

    @Override
    public void driveLogged(DriveLogged fact) {
        restamped = new DriveLogged(
                as,
                fact.again(),
                fact.fileSha256(),
                fact.fileBytes(),
                fact.calibrationId(),
                fact.map(),
                fact.verdict(),
                fact.missing(),
                fact.findings(),
                fact.risk(),
                fact.fit(),
                fact.headroomPercent(),
                fact.venue(),
                fact.columns(),
                fact.sampleSeconds(),
                fact.judgementSha256(),
                fact.source(),
                fact.performedBy(),
                fact.note());
    }

    @Override
    public void acknowledged(Fact.Acknowledged fact) {
        restamped = new Fact.Acknowledged(as, fact.usage(), fact.signedBy(), fact.text());
    }

    @Override
    public void voided(Fact.Voided fact) {
        restamped = new Fact.Voided(as, fact.targetId(), fact.reason(), fact.replacedBy());
    }

    @Override
    public void retuneOpened(Fact.RetuneOpened fact) {
        restamped = new Fact.RetuneOpened(as, fact.itemId(), fact.causes());
    }

    @Override
    public void retuneJoined(Fact.RetuneJoined fact) {
        restamped = new Fact.RetuneJoined(as, fact.itemId(), fact.causes());
    }

    @Override
    public void retunePlanned(Fact.RetunePlanned fact) {
        restamped = new Fact.RetunePlanned(as, fact.itemId(), fact.assignee(), fact.promisedAt(), fact.note());
    }

    @Override
    public void retuneLapsed(Fact.RetuneLapsed fact) {
        restamped = new Fact.RetuneLapsed(as, fact.itemId());
    }

    @Override
    public void cleared(Fact.Cleared fact) {
        restamped = new Fact.Cleared(as, fact.itemId(), fact.basis(), fact.tokenId(), fact.evidence(), fact.note());
    }

    @Override
    public void handedOver(Fact.HandedOver fact) {
        restamped = new Fact.HandedOver(
                as,
                fact.basis(),
                fact.odometerKm(),
                fact.exception(),
                fact.failedChecks(),
                fact.decision(),
                fact.rules());
    }

    @Override
    public void handoffRefused(Fact.HandoffRefused fact) {
        restamped = new Fact.HandoffRefused(as, fact.failedChecks(), fact.decision());
    }
}
