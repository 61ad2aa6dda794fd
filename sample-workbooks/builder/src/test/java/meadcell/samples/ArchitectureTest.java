package meadcell.samples;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/**
 * The workbooks rest on the vocabulary of sheets, and on the hosts only where they are computed.
 */
@AnalyzeClasses(packages = "meadcell.samples", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  @ArchTest
  static final ArchRule ROOMS_DO_NOT_GO_IN_CIRCLES =
      slices().matching("meadcell.samples.(*)").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule A_SHEET_KNOWS_NO_WORKBOOK =
      noClasses()
          .that()
          .resideInAPackage("meadcell.samples.sheet")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "meadcell.samples", "meadcell.samples.cellar", "meadcell.samples.week");

  @ArchTest
  static final ArchRule OF_THE_BATCH_TOOL_ONLY_ITS_CALCULATION =
      noClasses()
          .should()
          .dependOnClassesThat(
              resideInAPackage("meadcell.batch..")
                  .and(resideOutsideOfPackage("meadcell.batch.calculation")));

  @ArchTest
  static final ArchRule NO_OFFICE_INSIDE_THE_BOOKS =
      noClasses()
          .that()
          .resideInAnyPackage("meadcell.samples.*")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("meadcell.office..", "meadcell.calc..", "com.sun.star..");
}
