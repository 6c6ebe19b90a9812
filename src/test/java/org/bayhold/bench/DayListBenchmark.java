package org.bayhold.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bayhold.support.Car;
import org.bayhold.support.FreshBayhold;
import org.bayhold.support.Part;
import org.bayhold.support.Role;
import org.bayhold.support.Shop;
import org.bayhold.support.Visitor;
import org.junit.jupiter.api.Test;

/** The list of the day beside the gate of each of its cars, asked for one by one: docs/benchmarks.md. */
class DayListBenchmark {
    private static final int CARS = 60;
    private static final int WARMING = 15;
    private static final int ROUNDS = Integer.getInteger("bayhold.bench.rounds", 25);

    @Test
    void onH2() {
        compare("H2", FreshBayhold.Store.h2());
    }

    @Test
    void onPostgres() {
        compare("PostgreSQL", FreshBayhold.Store.postgres(DayListBenchmark.class));
    }

    private static void compare(String database, FreshBayhold.Store store) {
        try (FreshBayhold bayhold = FreshBayhold.withoutCars(store)) {
            Shop shop = bayhold.shop();
            List<Car> cars = cars(shop);
            Visitor reader = shop.visitor(Role.TECH);
            double[] lists = new double[ROUNDS];
            double[] ratios = new double[ROUNDS];
            for (int round = -WARMING; round < ROUNDS; round++) {
                double list = millis(() -> reader.opens("/today").is(200));
                double each = millis(() -> cars.forEach(Car::gate));
                if (round >= 0) {
                    lists[round] = list;
                    ratios[round] = list / each;
                }
            }
            System.out.printf(
                    Locale.ROOT,
                    "%s, %d cars: list of the day, median %.0f ms; beside the gate of each, median ratio %.2f%n",
                    database,
                    CARS,
                    DriveLogBenchmark.median(lists),
                    DriveLogBenchmark.median(ratios));
        }
    }

    /** Every second one has other injectors than its calibration was written for. */
    private static List<Car> cars(Shop shop) {
        Part written = shop.injectors(440);
        Part larger = shop.injectors(600);
        List<Car> cars = new ArrayList<>();
        for (int i = 0; i < CARS; i++) {
            Car car = shop.aCarCalibratedFor(written, shop.aPartFor("AIR_INTAKE"));
            if (i % 2 == 0) {
                car.fits(larger);
            }
            cars.add(car);
        }
        return cars;
    }

    private static double millis(Runnable work) {
        long begin = System.nanoTime();
        work.run();
        return (System.nanoTime() - begin) / 1e6;
    }
}
