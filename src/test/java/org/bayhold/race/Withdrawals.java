package org.bayhold.race;

import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.flash;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.bayhold.support.Answer;
import org.bayhold.support.Body;
import org.bayhold.support.Calibration;
import org.bayhold.support.Car;
import org.bayhold.support.Part;
import org.bayhold.support.RevisionDraft;
import org.bayhold.support.Role;
import org.bayhold.support.Shop;

/** A revision is withdrawn at the moment at which finished cars are handed over, and others are flashed with it. */
final class Withdrawals {
    private static final int LEAVING = 6;
    private static final int BEING_FLASHED = 4;

    private final Shop shop;
    private final Crowd crowd;
    private final Tally tally;

    Withdrawals(Shop shop, Crowd crowd, Tally tally) {
        this.shop = shop;
        this.crowd = crowd;
        this.tally = tally;
    }

    /** One such moment; the ids of its cars. */
    List<String> run() {
        String ecuHardware = aCar().text("ecuHardware");
        Part intake = shop.aPartFor("AIR_INTAKE");
        Calibration calibration = shop.issues(RevisionDraft.forEcu(ecuHardware).covers(intake));
        List<Car> cars = new ArrayList<>();
        for (int i = 0; i < LEAVING + BEING_FLASHED; i++) {
            cars.add(shop.registers(aCar().with("ecuHardware", ecuHardware)));
        }
        AtomicInteger toFinish = new AtomicInteger();
        crowd.allAtOnce(random -> {
            for (int i = toFinish.getAndIncrement(); i < cars.size(); i = toFinish.getAndIncrement()) {
                prepare(cars.get(i), i < LEAVING, intake, calibration);
            }
        });
        AtomicInteger places = new AtomicInteger();
        crowd.allAtOnce(random -> {
            int place = places.getAndIncrement();
            if (place < cars.size()) {
                act(cars.get(place), place < LEAVING, calibration);
            } else if (place == cars.size()) {
                tally.count("withdrawal", withdraw(shop, calibration));
            }
        });
        return cars.stream().map(Car::id).toList();
    }

    private static void prepare(Car car, boolean leaves, Part intake, Calibration calibration) {
        car.fits(intake);
        if (leaves) {
            car.isFinishedWith(calibration);
        }
    }

    private void act(Car car, boolean leaves, Calibration calibration) {
        if (leaves) {
            tally.count("handover", shop.as(Role.WRITER).post(car.path("handoffs"), Body.empty()));
        } else {
            tally.count("flashes", shop.as(Role.TECH).post(car.path("flashes"), flash(calibration)));
        }
    }

    static Answer withdraw(Shop shop, Calibration calibration) {
        Body reason = Body.of("reason", "leans out above five thousand");
        return shop.as(Role.CALIBRATOR).post("/calibrations/" + calibration.id() + "/withdrawal", reason);
    }
}
