package org.bayhold.buildsheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.bayhold.buildsheet.RandomHistories.History;
import org.bayhold.buildsheet.RandomHistories.Moments;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.EffectGroups;
import org.bayhold.catalog.Place;

/** The answers to every question about one car, each under its name, so that a failure tells only what differs. */
record Answers(Map<String, Object> byQuestion) {
    static Answers searched(History history, Moments when) {
        BruteForceCar car = history.search(when);
        Map<String, Map<Place, Fitted>> gaps = new LinkedHashMap<>();
        history.revisions().forEach(revision -> gaps.put(revision.revision(), car.gaps(revision)));
        return of(
                car.buildSheet(),
                gaps,
                Map.of(
                        "ECU hardware", car.ecuHardware(),
                        "in ECU", car.inEcu(),
                        "never flashed", car.neverFlashed(),
                        "changes", car.changes(),
                        "drive logs", car.driveLogs(),
                        "open item", car.openItem(),
                        "stay", car.stay()));
    }

    static Answers folded(History history, Moments when) {
        CarState car = history.fold(when);
        Map<Place, BruteForcePlaces.Sheet> sheet = new LinkedHashMap<>();
        for (BuildLine line : car.lines()) {
            sheet.put(
                    line.place(),
                    new BruteForcePlaces.Sheet(
                            line.group(), line.fitted(), line.since(), line.recordId(), line.knownSince()));
        }
        Map<String, Map<Place, Fitted>> gaps = new LinkedHashMap<>();
        for (Revision revision : history.revisions()) {
            Map<Place, Fitted> fitted = new LinkedHashMap<>();
            Coverage.gaps(car, revision, new EffectGroups(history.moves()))
                    .forEach(gap -> fitted.put(gap.place(), gap.fitted()));
            gaps.put(revision.revision(), fitted);
        }
        return of(
                sheet,
                gaps,
                Map.of(
                        "ECU hardware", car.ecuHardware(),
                        "in ECU", car.inEcu(),
                        "never flashed", car.neverFlashed(),
                        "changes", car.changes(),
                        "drive logs",
                                car.driveLogs().stream()
                                        .map(log -> log.stamp().id())
                                        .toList(),
                        "open item", car.openItem(),
                        "stay", car.stay()));
    }

    private static Answers of(
            Map<Place, BruteForcePlaces.Sheet> sheet,
            Map<String, Map<Place, Fitted>> gaps,
            Map<String, Object> others) {
        Map<String, Object> all = new LinkedHashMap<>(others);
        all.put("order of the places", List.copyOf(sheet.keySet()));
        sheet.forEach((place, line) -> all.put(place.toString(), line));
        gaps.forEach((revision, gap) -> {
            all.put("gaps of " + revision, gap);
            all.put("order of the gaps of " + revision, List.copyOf(gap.keySet()));
        });
        return new Answers(all);
    }

    List<String> differencesFrom(Answers other) {
        Set<String> questions = new LinkedHashSet<>(byQuestion.keySet());
        questions.addAll(other.byQuestion.keySet());
        List<String> differences = new ArrayList<>();
        for (String question : questions) {
            Object here = byQuestion.get(question);
            Object there = other.byQuestion.get(question);
            if (!Objects.equals(here, there)) {
                differences.add(question + ": " + here + " against " + there);
            }
        }
        return differences;
    }
}
