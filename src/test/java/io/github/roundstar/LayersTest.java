package io.github.roundstar;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Locale;

/** The whole package graph: arrows point only downward, and each library has one door. */
@AnalyzeClasses(packages = "io.github.roundstar", importOptions = DoNotIncludeTests.class)
class LayersTest {
  private static final String BASE = "io.github.roundstar.";

  @ArchTest
  static final ArchRule arrowsPointDown =
      layeredArchitecture()
          .consideringOnlyDependenciesInAnyPackage("io.github.roundstar..")
          .layer("cli")
          .definedBy("..cli..")
          .layer("report")
          .definedBy("..report..")
          .layer("pipeline")
          .definedBy("..pipeline..")
          .layer("compare")
          .definedBy("..compare..")
          .layer("diagnosis")
          .definedBy("..diagnosis..")
          .layer("results")
          .definedBy("..results..")
          .layer("motion")
          .definedBy("..motion..")
          .layer("stars")
          .definedBy("..stars..")
          .layer("simulate")
          .definedBy("..simulate..")
          .layer("ingest")
          .definedBy("..ingest..")
          .layer("formats")
          .definedBy("..formats..")
          .layer("sky")
          .definedBy("..sky..")
          .layer("signal")
          .definedBy("..signal..")
          .layer("model")
          .definedBy("..model..")
          .withOptionalLayers(true)
          .whereLayer("cli")
          .mayNotBeAccessedByAnyLayer()
          .whereLayer("report")
          .mayOnlyAccessLayers("results", "model")
          .whereLayer("pipeline")
          .mayOnlyAccessLayers(
              "report", "compare", "diagnosis", "results", "stars", "ingest", "formats", "model")
          .whereLayer("compare")
          .mayOnlyAccessLayers("results", "signal", "model")
          .whereLayer("diagnosis")
          .mayOnlyAccessLayers("results", "motion", "stars", "sky", "signal", "model")
          .whereLayer("results")
          .mayOnlyAccessLayers("model")
          .whereLayer("motion")
          .mayOnlyAccessLayers("sky", "signal", "model")
          .whereLayer("stars")
          .mayOnlyAccessLayers("signal", "model")
          .whereLayer("simulate")
          .mayOnlyAccessLayers("formats", "sky", "model")
          .whereLayer("ingest")
          .mayOnlyAccessLayers("formats", "sky", "signal", "model")
          .whereLayer("formats")
          .mayNotAccessAnyLayer()
          .whereLayer("sky")
          .mayNotAccessAnyLayer()
          .whereLayer("signal")
          .mayOnlyAccessLayers("model")
          .whereLayer("model")
          .mayNotAccessAnyLayer();

  @ArchTest
  static final ArchRule everyClassHasALayer =
      classes()
          .should()
          .resideInAnyPackage(
              BASE + "cli..",
              BASE + "report..",
              BASE + "pipeline..",
              BASE + "compare..",
              BASE + "diagnosis..",
              BASE + "results..",
              BASE + "motion..",
              BASE + "stars..",
              BASE + "simulate..",
              BASE + "ingest..",
              BASE + "formats..",
              BASE + "sky..",
              BASE + "signal..",
              BASE + "model..");

  @ArchTest
  static final ArchRule noPackageCycles =
      slices().matching(BASE + "(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule chartsAndTemplatesStayInReport =
      fence("..report..", "org.jfree..", "org.thymeleaf..", "java.awt..");

  @ArchTest static final ArchRule optionsStayInCli = fence("..cli..", "picocli..");

  @ArchTest
  static final ArchRule fileFormatsStayInFormats =
      fence(
          "..formats..",
          "org.apache.commons.csv..",
          "org.yaml..",
          "com.fasterxml.jackson.dataformat.toml..",
          "nom.tam..",
          "com.drew..",
          "java.util.zip..");

  @ArchTest
  static final ArchRule jsonStaysInResultsAndFormats =
      noClasses()
          .that()
          .resideOutsideOfPackages("..results..", "..formats..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("com.fasterxml..");

  @ArchTest
  static final ArchRule clockLocaleAndZoneStayInCli =
      noClasses()
          .that()
          .resideOutsideOfPackage("..cli..")
          .should()
          .callMethod(Locale.class, "getDefault")
          .orShould()
          .callMethod(Locale.class, "getDefault", Locale.Category.class)
          .orShould()
          .callMethod(ZoneId.class, "systemDefault")
          .orShould()
          .callMethod(Instant.class, "now")
          .orShould()
          .dependOnClassesThat()
          .areAssignableTo(Clock.class);

  @ArchTest
  static final ArchRule onlyCliPrints =
      noClasses()
          .that()
          .resideOutsideOfPackage("..cli..")
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err");

  private static ArchRule fence(String home, String... libraries) {
    return noClasses()
        .that()
        .resideOutsideOfPackage(home)
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(libraries)
        .allowEmptyShould(true);
  }
}
