package meadcell.calc;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackages;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** The extension holds no formula; what is in it does not need what builds it. */
@AnalyzeClasses(packages = "meadcell.calc", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  @ArchTest
  static final ArchRule KNOWS_THE_CATALOGUE_AND_NO_FAMILY =
      classes()
          .that()
          .resideOutsideOfPackage("meadcell.calc.extension")
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage(
              "meadcell.calc",
              "meadcell.calc.menu",
              "meadcell.catalogue",
              "meadcell.formula",
              "meadcell.cellar",
              "java..",
              "com.sun.star..");

  @ArchTest
  static final ArchRule BUILDING_KNOWS_NO_FAMILY_EITHER =
      noClasses()
          .should()
          .dependOnClassesThat(
              resideInAPackage("meadcell..")
                  .and(
                      resideOutsideOfPackages(
                          "meadcell.calc..",
                          "meadcell.catalogue",
                          "meadcell.cellar",
                          "meadcell.formula")));

  /** The menu must load where the Java is too old for the functions. */
  @ArchTest
  static final ArchRule THE_MENU_NEEDS_NO_FUNCTIONS =
      classes()
          .that()
          .resideInAPackage("meadcell.calc.menu")
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage("meadcell.calc.menu", "java..", "com.sun.star..");
}
