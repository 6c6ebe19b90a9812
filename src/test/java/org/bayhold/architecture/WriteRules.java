package org.bayhold.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.properties.HasAnnotations;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.springframework.data.jpa.repository.Modifying;
import org.springframework.data.repository.Repository;
import org.springframework.transaction.TransactionManager;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionOperations;

/** A fact is written in one way only: inside a write template's work, which has the chain's lock and appends to the journal. */
final class WriteRules {
    /** Who writes through what. What is not named here is written by nobody. */
    static final Map<String, Set<String>> WRITERS = Map.ofEntries(
            Map.entry("ChainHeads", Set.of("WriteTemplate")),
            Map.entry("JournalEntries", Set.of("OpenChain")),
            Map.entry("IdempotencyRows", Set.of("WriteTemplate", "ForgettingAnswers")),
            Map.entry("PersonalRows", Set.of("PersonalData")),
            Map.entry("FollowUpRows", Set.of("OpenChain", "FollowUps")),
            Map.entry("Users", Set.of("People")),
            Map.entry("Tokens", Set.of("AccessTokens")),
            Map.entry("SignInFailures", Set.of("SignInThrottle")),
            Map.entry("PartSpecs", Set.of("CatalogWrites")),
            Map.entry("Corrections", Set.of("CatalogWrites")),
            Map.entry("CategoryMoves", Set.of("CatalogWrites")),
            Map.entry("BenefitNotes", Set.of("CatalogWrites")),
            Map.entry("AdviceRows", Set.of("AdviceWrites")),
            Map.entry("Plans", Set.of("AdviceWrites")),
            Map.entry("DroppedPlans", Set.of("AdviceWrites")),
            Map.entry("VehicleRows", Set.of("VehicleWrites", "Vehicles")),
            Map.entry("CalibrationRows", Set.of("CalibrationWrites")),
            Map.entry("Withdrawals", Set.of("CalibrationWrites")),
            Map.entry("FactRows", Set.of("OpenCar")),
            Map.entry("JudgementRows", Set.of("Judgements")),
            Map.entry("ColumnMeaningRows", Set.of("ColumnMeanings")),
            Map.entry("RetuneItemRows", Set.of("OpeningItems", "RetuneItems")),
            Map.entry("CauseRows", Set.of("OpeningItems")),
            Map.entry("PolicyRows", Set.of("PolicyBook")),
            // rows that show the present, and are changed by Hibernate when they are told to
            Map.entry("VehicleRow", Set.of("VehicleWrites")),
            Map.entry("RetuneItemRow", Set.of("OpeningItems", "RetuneItems")),
            Map.entry("UserRow", Set.of("People")));

    /** The moves of those rows. */
    static final Map<String, Set<String>> MOVES = Map.of(
            "VehicleRow",
            Set.of("amend"),
            "RetuneItemRow",
            Set.of("joined", "closed", "planned"),
            "UserRow",
            Set.of("change", "newPassword", "chooseUnits"));

    static final ArchRule ONLY_THE_NAMED_WRITE =
            classes().should(Broken.by("write that is not named in WriteRules.WRITERS", WriteRules::unnamedWrites));

    static final ArchRule ONLY_THE_JOURNAL_HAS_THE_DATABASE_ITSELF = noClasses()
            .that()
            .resideOutsideOfPackage("..journal..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("org.springframework.jdbc..", "java.sql..", "javax.sql..")
            .orShould()
            .dependOnClassesThat()
            .haveFullyQualifiedName("jakarta.persistence.EntityManager")
            .orShould()
            .dependOnClassesThat()
            .areAssignableTo(TransactionManager.class)
            .orShould()
            .dependOnClassesThat()
            .areAssignableTo(TransactionOperations.class);

    static final ArchRule ONLY_THE_TEMPLATE_BEGINS_A_WRITE = classes()
            .that()
            .resideOutsideOfPackages("..journal..", "..identity..")
            .should(Broken.by("transaction that may write", WriteRules::writingTransactions));

    private WriteRules() {}

    private static Stream<String> unnamedWrites(JavaClass type) {
        return type.getAccessesFromSelf().stream()
                .filter(WriteRules::isAWrite)
                .filter(access -> !WRITERS.getOrDefault(access.getTargetOwner().getSimpleName(), Set.of())
                        .contains(Broken.outermost(type)))
                .map(JavaAccess::getDescription);
    }

    private static boolean isAWrite(JavaAccess<?> access) {
        if (!(access.getTarget() instanceof CodeUnitAccessTarget target)) {
            return false;
        }
        JavaClass owner = target.getOwner();
        if (MOVES.getOrDefault(owner.getSimpleName(), Set.of()).contains(target.getName())) {
            return true;
        }
        return owner.isAssignableTo(Repository.class)
                && (target.getName().matches("(save|insert|delete|flush).*") || isModifying(target));
    }

    private static boolean isModifying(CodeUnitAccessTarget target) {
        return target.resolveMember()
                .filter(member -> member.isAnnotatedWith(Modifying.class))
                .isPresent();
    }

    private static Stream<String> writingTransactions(JavaClass type) {
        Stream<String> ofMethods = type.getMethods().stream()
                .filter(WriteRules::mayWrite)
                .map(method -> method.getFullName() + " is a transaction that may write");
        return mayWrite(type)
                ? Stream.concat(Stream.of(type.getName() + " is a transaction that may write"), ofMethods)
                : ofMethods;
    }

    private static boolean mayWrite(HasAnnotations<?> annotated) {
        return annotated.isAnnotatedWith(Transactional.class)
                && !annotated.getAnnotationOfType(Transactional.class).readOnly();
    }
}
