package org.bayhold.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaFieldAccess;
import com.tngtech.archunit.core.domain.properties.CanBeAnnotated.Predicates;
import com.tngtech.archunit.lang.ArchRule;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.ManyToMany;
import jakarta.persistence.ManyToOne;
import jakarta.persistence.MappedSuperclass;
import jakarta.persistence.OneToMany;
import jakarta.persistence.OneToOne;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.bayhold.identity.ForEverybody;
import org.bayhold.identity.Needs;
import org.springframework.data.repository.Repository;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.RequestMapping;

/** How entities, repositories and controllers look. */
final class ShapeRules {
    private static final DescribedPredicate<JavaClass> ARE_REPOSITORIES =
            DescribedPredicate.describe("are repositories", type -> type.isAssignableTo(Repository.class));
    private static final DescribedPredicate<JavaClass> ARE_ENTITIES = DescribedPredicate.describe(
            "are entities",
            type -> type.isAnnotatedWith(Entity.class)
                    || type.isAnnotatedWith(Embeddable.class)
                    || type.isAnnotatedWith(MappedSuperclass.class));
    private static final DescribedPredicate<JavaClass> ARE_CONTROLLERS =
            DescribedPredicate.describe("are controllers", type -> type.isMetaAnnotatedWith(Controller.class));

    static final ArchRule MODULES_KEEP_THEIR_INSIDE = classes()
            .that(ARE_REPOSITORIES)
            .or(ARE_CONTROLLERS)
            .or()
            .areAnnotatedWith(Entity.class)
            .or()
            .areAnnotatedWith(Embeddable.class)
            .should()
            .notBePublic();

    static final ArchRule NOTHING_IS_FETCHED_UNASKED =
            classes().that(ARE_ENTITIES).should(Broken.by("eager field", ShapeRules::eagerFields));

    static final ArchRule ROWS_ARE_WRITTEN_ONCE = classes()
            .that(ARE_ENTITIES)
            .should(Broken.by(
                    "field that is set but by its constructors and in WriteRules.MOVES", ShapeRules::changes));

    static final ArchRule EVERY_ROUTE_SAYS_WHO_MAY = methods()
            .that()
            .areDeclaredInClassesThat(ARE_CONTROLLERS)
            .and(Predicates.metaAnnotatedWith(RequestMapping.class))
            .should()
            .beAnnotatedWith(Needs.class)
            .orShould()
            .beAnnotatedWith(ForEverybody.class)
            .because("a route without it is refused to everybody");

    static final ArchRule REPOSITORIES_ARE_PLURAL =
            classes().that(ARE_REPOSITORIES).should().haveNameMatching(".*[^s]s");

    static final ArchRule NO_LOGGING_BUT_SLF4J =
            noClasses().should().dependOnClassesThat().resideInAPackage("java.util.logging..");

    static final ArchRule NO_STANDARD_STREAMS = noClasses()
            .should()
            .accessField(System.class, "out")
            .orShould()
            .accessField(System.class, "err")
            .orShould()
            .callMethod(Throwable.class, "printStackTrace");

    private ShapeRules() {}

    private static Stream<String> eagerFields(JavaClass entity) {
        return entity.getFields().stream()
                .filter(field -> fetch(field).filter(FetchType.EAGER::equals).isPresent())
                .map(field -> field.getFullName() + " is fetched whenever its row is");
    }

    /** How an association is fetched; two of the five are eager where they do not say. */
    private static Optional<FetchType> fetch(JavaField field) {
        return Stream.of(
                        field.tryGetAnnotationOfType(ManyToOne.class).map(ManyToOne::fetch),
                        field.tryGetAnnotationOfType(OneToOne.class).map(OneToOne::fetch),
                        field.tryGetAnnotationOfType(OneToMany.class).map(OneToMany::fetch),
                        field.tryGetAnnotationOfType(ManyToMany.class).map(ManyToMany::fetch),
                        field.tryGetAnnotationOfType(ElementCollection.class).map(ElementCollection::fetch))
                .flatMap(Optional::stream)
                .findFirst();
    }

    private static Stream<String> changes(JavaClass entity) {
        Set<String> moves = WriteRules.MOVES.getOrDefault(entity.getSimpleName(), Set.of());
        Stream<String> sets = entity.getAccessesToSelf().stream()
                .filter(JavaFieldAccess.class::isInstance)
                .map(JavaFieldAccess.class::cast)
                .filter(access -> access.getAccessType() == JavaFieldAccess.AccessType.SET)
                .filter(access -> !constructs(access.getOrigin(), entity))
                .filter(access -> !moves.contains(access.getOrigin().getName()))
                .map(JavaFieldAccess::getDescription);
        Stream<String> setters = entity.getMethods().stream()
                .filter(method -> method.getName().matches("set[A-Z].*"))
                .map(method -> method.getFullName() + " is a setter");
        return Stream.concat(sets, setters);
    }

    /** A constructor, or a helper inside the entity that only its constructors make. */
    private static boolean constructs(JavaCodeUnit origin, JavaClass entity) {
        JavaClass owner = origin.getOwner();
        if (owner.equals(entity)) {
            return origin.isConstructor();
        }
        return owner.getEnclosingClass().filter(entity::equals).isPresent()
                && owner.getConstructors().stream()
                        .flatMap(constructor -> constructor.getCallsOfSelf().stream())
                        .allMatch(call -> constructs(call.getOrigin(), entity));
    }
}
