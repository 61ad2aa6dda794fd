package meadcell.office;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** The driver knows nothing of what it is used for. */
@AnalyzeClasses(packages = "meadcell.office", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  @ArchTest
  static final ArchRule RUNS_ON_THE_JDK_ALONE =
      classes()
          .that()
          .resideInAPackage("meadcell.office")
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage("meadcell.office", "java..");

  @ArchTest
  static final ArchRule DRIVES_OVER_UNO =
      classes()
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage("meadcell.office..", "java..", "com.sun.star..");
}
