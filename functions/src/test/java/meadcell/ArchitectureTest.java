package meadcell;

import static com.tngtech.archunit.core.domain.JavaCall.Predicates.target;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.name;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.io.File;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.util.Locale;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;

/** The arithmetic knows no host, no file, no locale and no clock. */
@AnalyzeClasses(packages = "meadcell", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  @ArchTest
  static final ArchRule RESTS_ON_THE_JDK_AND_COMMONS_MATH =
      classes()
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage("meadcell..", "java..", "org.apache.commons.math3..");

  @ArchTest
  static final ArchRule KNOWS_NO_FILE_NO_LOCALE_AND_NO_CLOCK =
      noClasses()
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.nio.file..", "java.text..", "java.sql..")
          .orShould()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .dependOnClassesThat()
          .belongToAnyOf(File.class, FileInputStream.class, FileOutputStream.class)
          .orShould()
          .callMethod(System.class, "nanoTime")
          .orShould()
          .callMethodWhere(target(name("now")))
          .orShould()
          .callMethod(Locale.class, "getDefault");

  @ArchTest
  static final ArchRule FAMILIES_DO_NOT_GO_IN_CIRCLES =
      slices().matching("meadcell.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule FUNCTIONS_ARE_PUBLIC_STATIC_MEMBERS_OF_A_FAMILY =
      methods()
          .that()
          .areAnnotatedWith(CellarFunction.class)
          .should()
          .bePublic()
          .andShould()
          .beStatic()
          .andShould()
          .beDeclaredInClassesThat()
          .areAnnotatedWith(Family.class);

  @ArchTest
  static final ArchRule A_FAMILY_SHOWS_ITS_FUNCTIONS_AND_WHAT_THEY_TAKE =
      classes()
          .that()
          .arePublic()
          .and()
          .areTopLevelClasses()
          .and()
          .resideOutsideOfPackages(
              "meadcell.catalogue",
              "meadcell.density",
              "meadcell.formula",
              "meadcell.law",
              "meadcell.transfers")
          .should()
          .beAnnotatedWith(Family.class)
          .orShould()
          .beAssignableTo(Record.class);
}
