package plumbline;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClass.Predicates;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.Architectures;

/** Holds the package map of DEVELOPERS.md: arrows only downward, no cycles, libraries fenced. */
@AnalyzeClasses(packages = "plumbline", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  @ArchTest
  static final ArchRule packages_import_only_what_lies_below_them =
      Architectures.layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .withOptionalLayers(true)
          .layer("cli")
          .definedBy("plumbline.cli..")
          .layer("run")
          .definedBy("plumbline.run..")
          .layer("report")
          .definedBy("plumbline.report..")
          .layer("inspect")
          .definedBy("plumbline.inspect..")
          .layer("window")
          .definedBy("plumbline.window..")
          .layer("wish")
          .definedBy("plumbline.wish..")
          .layer("history")
          .definedBy("plumbline.history..")
          .layer("waiver")
          .definedBy("plumbline.waiver..")
          .layer("audit")
          .definedBy("plumbline.audit..")
          .layer("judge")
          .definedBy("plumbline.judge..")
          .layer("rules")
          .definedBy("plumbline.rules..")
          .layer("promise")
          .definedBy("plumbline.promise..")
          .layer("fabric")
          .definedBy("plumbline.fabric..")
          .layer("design")
          .definedBy("plumbline.design..")
          .layer("effective")
          .definedBy("plumbline.effective..")
          .layer("syntax")
          .definedBy("plumbline.syntax..")
          .layer("yaml")
          .definedBy("plumbline.yaml..")
          .layer("intake")
          .definedBy("plumbline.intake..")
          .layer("result")
          .definedBy("plumbline.result..")
          .layer("finding")
          .definedBy("plumbline.finding..")
          .layer("statement")
          .definedBy("plumbline.statement..")
          .layer("setting")
          .definedBy("plumbline.setting..")
          .layer("port")
          .definedBy("plumbline.port..")
          .layer("vlan")
          .definedBy("plumbline.vlan..")
          .layer("text")
          .definedBy("plumbline.text..")
          .whereLayer("cli")
          .mayNotBeAccessedByAnyLayer()
          .whereLayer("run")
          .mayOnlyBeAccessedByLayers("cli")
          .whereLayer("report")
          .mayOnlyBeAccessedByLayers("cli")
          .whereLayer("inspect")
          .mayOnlyBeAccessedByLayers("cli")
          .whereLayer("window")
          .mayOnlyBeAccessedByLayers("run")
          .whereLayer("wish")
          .mayOnlyBeAccessedByLayers("inspect", "window")
          .whereLayer("history")
          .mayOnlyBeAccessedByLayers("cli", "run")
          .whereLayer("waiver")
          .mayOnlyBeAccessedByLayers("cli", "run")
          .whereLayer("audit")
          .mayOnlyBeAccessedByLayers("cli", "run")
          .whereLayer("judge")
          .mayOnlyBeAccessedByLayers("audit")
          .whereLayer("rules")
          .mayOnlyBeAccessedByLayers("cli", "run", "waiver", "audit", "judge")
          .whereLayer("promise")
          .mayOnlyBeAccessedByLayers("audit", "judge", "rules")
          .whereLayer("fabric")
          .mayOnlyBeAccessedByLayers("audit", "judge", "rules", "promise")
          .whereLayer("design")
          .mayOnlyBeAccessedByLayers(
              "cli", "run", "inspect", "window", "wish", "audit", "judge", "rules", "promise",
              "fabric")
          .whereLayer("effective")
          .mayOnlyBeAccessedByLayers(
              "cli", "run", "inspect", "window", "wish", "audit", "judge", "rules", "promise",
              "fabric", "design")
          .whereLayer("syntax")
          .mayOnlyBeAccessedByLayers("run")
          .whereLayer("intake")
          .mayOnlyBeAccessedByLayers("cli", "run")
          .whereLayer("result")
          .mayOnlyBeAccessedByLayers("cli", "run", "report", "window", "history", "waiver", "audit")
          .whereLayer("statement")
          .mayOnlyBeAccessedByLayers(
              "syntax",
              "effective",
              "inspect",
              "window",
              "run",
              "rules",
              "judge",
              "audit",
              "promise",
              "fabric")
          .because("data flows one way: text, syntax, effective, rules, judge, result, report");

  @ArchTest
  static final ArchRule reports_know_results_and_findings_only =
      noClasses()
          .that()
          .resideInAPackage("plumbline.report..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "plumbline.effective..",
              "plumbline.design..",
              "plumbline.rules..",
              "plumbline.syntax..",
              "plumbline.run..")
          .because("every format must say the same, so none may compute")
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule effective_settings_know_no_parser_and_no_design =
      noClasses()
          .that()
          .resideInAPackage("plumbline.effective..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("plumbline.syntax..", "plumbline.design..", "plumbline.intake..")
          .because("what a switch does must not depend on how its text was read or what was meant");

  @ArchTest
  static final ArchRule packages_are_free_of_cycles =
      slices().matching("plumbline.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule antlr_is_used_in_syntax_only =
      fenced("org.antlr..", "plumbline.syntax..", "the parser must stay replaceable");

  @ArchTest
  static final ArchRule picocli_is_used_in_cli_only =
      fenced("picocli..", "plumbline.cli..", "commands are the only users of the command line");

  @ArchTest
  static final ArchRule only_main_touches_the_process =
      noClasses()
          .that()
          .doNotHaveFullyQualifiedName("plumbline.cli.Main")
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err")
          .orShould()
          .accessField(System.class, "in")
          .orShould()
          .callMethod(System.class, "exit", int.class)
          .because("streams are handed in, so that commands are tested as a user sees them");

  @ArchTest
  static final ArchRule generated_code_stays_inside_syntax =
      classes()
          .that(Predicates.simpleNameStartingWith("SwitchConfig"))
          .should()
          .resideInAPackage("plumbline.syntax..")
          .allowEmptyShould(true);

  private static ArchRule fenced(String library, String home, String why) {
    return noClasses()
        .that()
        .resideOutsideOfPackage(home)
        .should()
        .dependOnClassesThat()
        .resideInAPackage(library)
        .because(why);
  }
}
