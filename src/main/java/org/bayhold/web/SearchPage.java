package org.bayhold.web;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.bayhold.calibration.Calibrations;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.PartSpec;
import org.bayhold.identity.Act;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.journal.Text;
import org.bayhold.vehicle.VehicleView;
import org.bayhold.vehicle.Vehicles;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** One search for everything: cars, parts, calibrations, and the trade's words for kinds of parts. */
@Controller
class SearchPage {
    private static final int MOST = 25;
    private static final int SHORTEST_WORD = 3;

    private final Vehicles vehicles;
    private final Catalog catalog;
    private final Calibrations calibrations;
    private final Ui ui;

    SearchPage(Vehicles vehicles, Catalog catalog, Calibrations calibrations, Ui ui) {
        this.vehicles = vehicles;
        this.catalog = catalog;
        this.calibrations = calibrations;
        this.ui = ui;
    }

    @Needs(Act.READ)
    @GetMapping("/search")
    ModelAndView search(Caller caller, @RequestParam @Nullable String q) {
        String text = Text.strip(q);
        if (text == null) {
            return page("", List.of(), List.of(), List.of(), List.of());
        }
        List<VehicleView> cars = vehicles.search(text, MOST, caller);
        List<Category> categories = categories(text);
        List<PartSpec> parts = catalog.search(text, categories, MOST);
        List<Revision> revisions = calibrations.search(text, MOST);
        boolean onlyOne = cars.size() == 1 && parts.isEmpty() && revisions.isEmpty() && categories.isEmpty();
        if (onlyOne || (cars.size() == 1 && isIts(text, cars.get(0)))) {
            UUID id = cars.get(0).id();
            return new ModelAndView("redirect:/cars/" + id);
        }
        return page(text, cars, categories, parts, revisions);
    }

    private static ModelAndView page(
            String q,
            List<VehicleView> cars,
            List<Category> categories,
            List<PartSpec> parts,
            List<Revision> revisions) {
        return new ModelAndView("web/search")
                .addObject("q", q)
                .addObject("cars", cars)
                .addObject("categories", categories)
                .addObject("parts", parts)
                .addObject("revisions", revisions)
                .addObject("nothing", cars.isEmpty() && categories.isEmpty() && parts.isEmpty() && revisions.isEmpty())
                .addObject("vin", q.matches("[A-HJ-NPR-Za-hj-npr-z0-9]{17}") ? q.toUpperCase(Locale.ROOT) : null)
                .addObject("most", MOST);
    }

    private static boolean isIts(String text, VehicleView car) {
        return text.equalsIgnoreCase(car.vin()) || text.equalsIgnoreCase(car.plate());
    }

    /** Codes and labels alike: "intercooler" and CHARGE_COOLER are one. */
    private List<Category> categories(String text) {
        String word = text.toLowerCase(Locale.ROOT);
        return Arrays.stream(Category.values())
                .filter(category -> word.length() >= SHORTEST_WORD)
                .filter(category -> category.name().toLowerCase(Locale.ROOT).contains(word.replace(' ', '_'))
                        || ui.label("category", category)
                                .toLowerCase(Locale.ROOT)
                                .contains(word))
                .toList();
    }
}
