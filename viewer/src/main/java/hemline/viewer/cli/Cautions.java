package hemline.viewer.cli;

import java.util.List;

/** What a person must mind who builds a machine by these figures; the README says more. */
final class Cautions {
  static final List<String> SHORT =
      List.of(
          "Before you build: a fan may burst and throw debris, so guard it; hold on a wall can end",
          "without warning, so tether the machine, clear the ground below and add a second hold; a",
          "floor drawn down pinches. Local codes and licensed practice decide, not this table.");

  private Cautions() {}
}
