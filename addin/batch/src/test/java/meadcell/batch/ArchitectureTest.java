package meadcell.batch;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import meadcell.batch.book.Format;

/** The rooms of the batch tool, lower ones first: none names a higher one. */
@AnalyzeClasses(packages = "meadcell.batch", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  @ArchTest
  static final ArchRule LOWER_ROOMS_NAME_NO_HIGHER_ONE =
      layeredArchitecture()
          .consideringOnlyDependenciesInAnyPackage("meadcell.batch..")
          .layer("command")
          .definedBy("meadcell.batch", "meadcell.batch.command..")
          .layer("verbs")
          .definedBy(
              "meadcell.batch.draft..",
              "meadcell.batch.fill..",
              "meadcell.batch.recalc..",
              "meadcell.batch.freeze..",
              "meadcell.batch.check..",
              "meadcell.batch.proof..")
          .layer("layout")
          .definedBy("meadcell.batch.layout..")
          .layer("plan")
          .definedBy("meadcell.batch.plan..")
          .layer("calculation")
          .definedBy("meadcell.batch.calculation..")
          .layer("report")
          .definedBy("meadcell.batch.report..")
          .layer("book")
          .definedBy("meadcell.batch.book..")
          .whereLayer("command")
          .mayNotBeAccessedByAnyLayer()
          .whereLayer("verbs")
          .mayOnlyBeAccessedByLayers("command")
          .whereLayer("layout")
          .mayOnlyBeAccessedByLayers("verbs")
          .whereLayer("plan")
          .mayOnlyBeAccessedByLayers("layout", "verbs", "command")
          .whereLayer("calculation")
          .mayOnlyBeAccessedByLayers("verbs", "command")
          .whereLayer("report")
          .mayOnlyBeAccessedByLayers("verbs", "command")
          .whereLayer("book")
          .mayNotAccessAnyLayer();

  @ArchTest
  static final ArchRule ROOMS_DO_NOT_GO_IN_CIRCLES =
      slices().matching("meadcell.batch.(**)").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule A_FORMAT_STAYS_IN_ITS_ROOM =
      noClasses()
          .that()
          .resideOutsideOfPackages(
              "meadcell.batch.book.xlsx",
              "meadcell.batch.book.xls",
              "meadcell.batch.book.ods",
              "meadcell.batch.book.csv")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "meadcell.batch.book.xlsx",
              "meadcell.batch.book.xls",
              "meadcell.batch.book.ods",
              "org.apache.poi.xssf..",
              "org.openxmlformats..");

  @ArchTest
  static final ArchRule A_ROOM_OF_A_FORMAT_SHOWS_ITS_FORMAT_ONLY =
      classes()
          .that()
          .resideInAnyPackage(
              "meadcell.batch.book.xlsx",
              "meadcell.batch.book.xls",
              "meadcell.batch.book.ods",
              "meadcell.batch.book.csv")
          .and()
          .arePublic()
          .should()
          .beAssignableTo(Format.class);

  @ArchTest
  static final ArchRule ONLY_COMMANDS_SPEAK_TO_TERMINALS_AND_PROGRAMS =
      noClasses()
          .that()
          .resideOutsideOfPackages("meadcell.batch", "meadcell.batch.command")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("com.google.gson..", "picocli..", "me.tongfei..");
}
