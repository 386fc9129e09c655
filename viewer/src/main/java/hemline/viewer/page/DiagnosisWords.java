package hemline.viewer.page;

import hemline.solver.rig.Diagnosis;
import hemline.solver.rig.Fault;
import hemline.solver.rig.FaultFit;
import hemline.viewer.format.Digits;
import hemline.viewer.format.LengthUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What the pattern of the comparison errors says of the rig. */
final class DiagnosisWords {
  private DiagnosisWords() {}

  /** Each fault alone with the size that explains most; the head first. */
  static List<List<String>> table(Diagnosis d) {
    List<List<String>> table = new ArrayList<>();
    if (d.fits().isEmpty()) {
      return table;
    }
    table.add(List.of("each alone", "size", "chi-square left", "likelihood"));
    table.add(
        List.of(
            "no fault", "", Digits.plain(d.chiSquareWithout(), 3), likelihood(d.weightWithout())));
    for (FaultFit fit : d.fits()) {
      table.add(
          List.of(
              fit.fault().words(),
              size(fit),
              Digits.plain(fit.chiSquare(), 3),
              likelihood(fit.weight())));
    }
    return table;
  }

  /** The finding in sentences. */
  static List<String> sentences(Diagnosis d) {
    List<String> told = new ArrayList<>();
    switch (d.finding()) {
      case TOO_FEW ->
          told.add(
              "Fewer than four points make no pattern; measure more gaps and suctions to look for"
                  + " faults of the rig.");
      case NO_FLOW ->
          told.add("Without a flow faults of the rig leave no pattern that could be told.");
      case NONE -> told.add("No fault of the rig is needed to explain the points.");
      case NAMED ->
          told.add(
              "The pattern is that of "
                  + (d.named().size() == 1 && d.alike().isEmpty()
                      ? "one fault: "
                      : "two faults together: ")
                  + d.named().stream()
                      .map(f -> f.fault().words() + ", " + size(f))
                      .collect(Collectors.joining("; and "))
                  + ". Look there first."
                  + (d.alike().isEmpty()
                      ? ""
                      : " Which the other is cannot be told: " + alike(d) + "."));
      case CANNOT_TELL ->
          told.add(
              d.alike().isEmpty()
                  ? "Cannot tell: the points scatter more than stated, and none of the faults"
                      + " explains it."
                  : "Cannot tell which: " + alike(d) + " explain the points about as well.");
    }
    if (d.finding() == Diagnosis.Finding.NAMED && d.leftOver()) {
      told.add("It does not explain all: something else is off too, or the accuracies are.");
    }
    boolean scale =
        d.fits().stream().anyMatch(f -> f.fault() == Fault.FLOW_SCALE && f.weight() > 0.1)
            || d.named().stream().anyMatch(f -> f.fault() == Fault.FLOW_SCALE);
    if (scale && d.finding() != Diagnosis.Finding.NONE) {
      told.add(
          "A prediction that is off by the same share everywhere has the same pattern as the scale"
              + " of the flow reading.");
    }
    told.add("Nothing of this is applied to any figure.");
    return told;
  }

  private static String alike(Diagnosis d) {
    return d.alike().stream().map(f -> f.fault().words()).collect(Collectors.joining(", or "));
  }

  private static String likelihood(double weight) {
    return weight < 0.001 ? "< 0.001" : Digits.plain(weight, 2);
  }

  /** A size with its uncertainty, in a unit for people. */
  static String size(FaultFit fit) {
    double factor =
        switch (fit.fault()) {
          case EXTRA_AREA -> LengthUnit.areaFactor();
          case GAP_OFFSET -> LengthUnit.factor();
          case GAUGE_ZERO -> 1;
          case FLOW_SCALE, HOSE -> 100;
        };
    String unit =
        switch (fit.fault()) {
          case EXTRA_AREA -> " " + LengthUnit.areaUnit();
          case GAP_OFFSET -> " " + LengthUnit.unit();
          case GAUGE_ZERO -> " Pa";
          case FLOW_SCALE -> " %";
          case HOSE -> " % of the suction at the largest flow";
        };
    return ComparePage.within(factor * fit.size(), factor * fit.uncertainty()) + unit;
  }
}
