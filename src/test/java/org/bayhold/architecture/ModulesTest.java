package org.bayhold.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import org.bayhold.BayholdApplication;
import org.junit.jupiter.api.Test;
import org.springframework.modulith.core.ApplicationModules;

/** First-level packages are modules, and use what their {@code package-info} says. */
class ModulesTest {
    private static final ApplicationModules MODULES = ApplicationModules.of(BayholdApplication.class);

    @Test
    void modulesUseWhatTheySayTheyUse() {
        MODULES.verify();
    }

    @Test
    void everyModuleSaysWhatItMayUse() {
        assertThat(MODULES.stream())
                .isNotEmpty()
                .allSatisfy(module -> assertThat(module.getBasePackage()
                                .getAnnotation(org.springframework.modulith.ApplicationModule.class)
                                .map(org.springframework.modulith.ApplicationModule::allowedDependencies)
                                .map(List::of))
                        .as("allowedDependencies of %s; without them it may use any module", module.getIdentifier())
                        .isPresent()
                        .hasValueSatisfying(allowed -> assertThat(allowed)
                                .doesNotContain(org.springframework.modulith.ApplicationModule.OPEN_TOKEN)));
    }

    @Test
    void aBreachIsReported() {
        ImportOption everything = location -> true;
        String report = ApplicationModules.of("fixtures.modules", everything)
                .detectViolations()
                .getMessages()
                .toString();

        assertThat(report)
                .as("cellar uses attic, and may use nothing")
                .containsPattern("Module 'cellar' depends on module 'attic'")
                .as("attic uses roof, which uses attic")
                .contains("Cycle detected: Slice attic")
                .as("roof uses what attic keeps inside")
                .containsPattern(
                        "Module 'roof' depends on non-exposed type fixtures\\.modules\\.attic\\.hidden\\.Chest");
    }
}
