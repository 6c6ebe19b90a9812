package org.bayhold.race;

import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.acknowledgement;
import static org.bayhold.support.Facts.adjust;
import static org.bayhold.support.Facts.exception;
import static org.bayhold.support.Facts.failedFlash;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.flash;
import static org.bayhold.support.Facts.leavingWith;
import static org.bayhold.support.Facts.refitFactory;
import static org.bayhold.support.Facts.voiding;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReferenceArray;
import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Calibration;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.bayhold.support.Shop;

/**
 * A busy afternoon: everybody works on the same few cars at once, each as the papers in front of them say, and nobody
 * waits for anybody. What comes of it is the judge's to say.
 */
final class Rush {
    private static final int CARS = 5;
    private static final int REVISIONS = 3;

    private final Shop shop;
    private final Crowd crowd;
    private final Tally tally;
    private final boolean withdrawals;
    private final String ecuHardware;
    private final List<Part> covered;
    private final Part uncovered;
    private final AtomicReferenceArray<Calibration> inForce = new AtomicReferenceArray<>(REVISIONS);
    private final List<HotCar> cars = new ArrayList<>();

    /** A car, and the records made of it that somebody may think wrong later. */
    record HotCar(String id, ConcurrentLinkedDeque<String> records) {
        String path(String below) {
            return "/vehicles/" + id + "/" + below;
        }
    }

    Rush(Shop shop, Crowd crowd, Tally tally, boolean withdrawals) {
        this.shop = shop;
        this.crowd = crowd;
        this.tally = tally;
        this.withdrawals = withdrawals;
        this.ecuHardware = aCar().text("ecuHardware");
        this.covered = List.of(shop.aPartFor("AIR_INTAKE"), shop.aPartFor("AIR_INTAKE"));
        this.uncovered = shop.aPartFor("AIR_INTAKE");
        for (int i = 0; i < REVISIONS; i++) {
            inForce.set(i, issued());
        }
        for (int i = 0; i < CARS; i++) {
            String id = shop.registers(aCar().with("ecuHardware", ecuHardware)).id();
            cars.add(new HotCar(id, new ConcurrentLinkedDeque<>()));
        }
    }

    private Calibration issued() {
        return shop.issues(RevisionDraft.forEcu(ecuHardware).coversOrFactory(covered.get(0), covered.get(1)));
    }

    /** The ids of the cars, after the given number of writes. */
    List<String> run(int writes) {
        AtomicInteger left = new AtomicInteger(writes);
        crowd.allAtOnce(random -> {
            while (left.get() > 0) {
                HotCar car = cars.get(random.nextInt(CARS));
                left.addAndGet(-work(car, random));
            }
        });
        return cars.stream().map(HotCar::id).toList();
    }

    /** One person's next piece of work; how many writes it was. */
    private int work(HotCar car, Random random) {
        int dice = random.nextInt(100);
        if (dice < 45) {
            return finish(car, random);
        }
        if (dice < 65) {
            record(Role.WRITER, car, "part-changes", change(random));
        } else if (dice < 80) {
            leave(car, random);
        } else if (dice < 88) {
            strikeOut(car);
        } else if (dice < 90) {
            withdraw(random);
        } else if (dice < 92) {
            tally.count("exception", shop.as(Role.MANAGER).post(car.path("handoffs"), leavingWith(exception())));
        } else if (dice < 94) {
            record(Role.TECH, car, "flashes", failedFlash(inForce.get(0)));
        } else {
            record(Role.WRITER, car, "acknowledgements", acknowledgement());
        }
        return 1;
    }

    private Body change(Random random) {
        Body change = switch (random.nextInt(8)) {
            case 0 -> fit(uncovered);
            case 1 -> refitFactory("AIR_INTAKE");
            case 2 -> adjust("AIR_INTAKE");
            default -> fit(covered.get(random.nextInt(2)));
        };
        // some are written down a little late
        return random.nextInt(6) == 0
                ? change.at(Instant.now().minus(Duration.ofMillis(random.nextInt(2000))))
                : change;
    }

    /** Flash, read back, sign off, acknowledge, hand over: what a car needs, unless somebody comes between. */
    private int finish(HotCar car, Random random) {
        Calibration calibration = inForce.get(random.nextInt(4) == 0 ? random.nextInt(REVISIONS) : 0);
        if (record(Role.TECH, car, "flashes", flash(calibration)).status() != 201) {
            return 1;
        }
        record(Role.TECH, car, "read-backs", calibration.reading());
        signOff(car);
        record(Role.WRITER, car, "acknowledgements", acknowledgement());
        leave(car, random);
        return 5;
    }

    private void signOff(HotCar car) {
        for (var item : shop.as(Role.CALIBRATOR).list(car.path("retune-items"))) {
            if (Answer.textOf(item.path("status")).equals("OPEN")) {
                Answer answer = shop.as(Role.CALIBRATOR)
                        .post("/retune-items/" + Answer.textOf(item.path("id")) + "/clearance", SIGNED);
                tally.count("sign-off", answer);
            }
        }
    }

    private static final Body SIGNED = Body.of("basis", "FLASHED");

    private void leave(HotCar car, Random random) {
        Body handoff = random.nextInt(10) == 0 ? Body.of("effectiveAt", Instant.now()) : Body.empty();
        tally.count("handover", shop.as(Role.WRITER).post(car.path("handoffs"), handoff));
    }

    private void strikeOut(HotCar car) {
        String wrong = car.records().pollLast();
        if (wrong != null) {
            tally.count("voiding", shop.as(Role.MANAGER).post("/records/" + wrong + "/voiding", voiding()));
        }
    }

    private void withdraw(Random random) {
        if (withdrawals) {
            int which = random.nextInt(REVISIONS);
            Calibration bad = inForce.getAndSet(which, issued());
            tally.count("withdrawal", Withdrawals.withdraw(shop, bad));
        }
    }

    private Answer record(Role role, HotCar car, String what, Body body) {
        Answer answer = shop.as(role).post(car.path(what), body);
        tally.count(what, answer);
        if (answer.status() == 201) {
            car.records().add(answer.id());
        }
        return answer;
    }
}
