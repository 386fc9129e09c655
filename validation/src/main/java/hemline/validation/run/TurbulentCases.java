package hemline.validation.run;

import hemline.solver.flow.Closure;
import java.util.Map;

/** Turbulent set-ups made in code, by the name that cases use. */
final class TurbulentCases {
  static final Map<String, ComputedCase> BY_KEY =
      Map.ofEntries(
          Map.entry("channel-sublayer", DevelopedGap.channel(13_750, 2, 32, 48, 64)),
          Map.entry("channel-buffer-layer", DevelopedGap.channel(13_750, 0, 20, 30, 40)),
          Map.entry("channel-logarithmic-layer", DevelopedGap.channel(13_750, 0, 6, 8, 10)),
          Map.entry("channel-re5600", DevelopedGap.channel(5_587, 2, 48, 72, 96)),
          Map.entry("channel-re40000", DevelopedGap.channel(40_000, 1.5, 16, 24, 32)),
          Map.entry("channel-re250000", DevelopedGap.channel(250_000, 1.5, 16, 24, 32)),
          Map.entry("couette-re6000", DevelopedGap.overGround(6_000, 0, 2, 32, 48, 64)),
          Map.entry("couette-re16000", DevelopedGap.overGround(16_000, 0, 2, 32, 48, 64)),
          Map.entry("couette-re40500", DevelopedGap.overGround(40_532, 0, 2, 32, 48, 64)),
          Map.entry(
              "couette-poiseuille-re12000",
              DevelopedGap.overGround(11_995.2, 13.238515, 2, 32, 48, 64)),
          Map.entry("turbulent-step", new TurbulentStep(36_000, 80, 9, false)),
          Map.entry("step-re5000", new TurbulentStep(4_840, 62, 6, true)),
          Map.entry("step-expansion-1.5", new TurbulentStep(44_700, 15, 3, false)),
          Map.entry("step-armaly-re6600", new TurbulentStep(3_101, 60, 2.064, false)),
          Map.entry("channel-at-10", slanted(Closure.SST, 13_750, 10, 0)),
          Map.entry("channel-at-20", slanted(Closure.SST, 13_750, 20, 0)),
          Map.entry("channel-at-45", slanted(Closure.SST, 13_750, 45, 0)),
          Map.entry("channel-at-20-re5600", slanted(Closure.SST, 5_600, 20, 0)),
          Map.entry("channel-at-45-re5600", slanted(Closure.SST, 5_600, 45, 0)),
          Map.entry("channel-at-20-re100000", slanted(Closure.SST, 100_000, 20, 0)),
          Map.entry("channel-at-45-re100000", slanted(Closure.SST, 100_000, 45, 0)),
          Map.entry("channel-at-20-ground", slanted(Closure.SST, 13_750, 20, 0.5)),
          Map.entry("channel-at-45-ground", slanted(Closure.SST, 13_750, 45, 0.5)),
          Map.entry("channel-at-10-sa", slanted(Closure.SA, 13_750, 10, 0)),
          Map.entry("channel-at-20-sa", slanted(Closure.SA, 13_750, 20, 0)),
          Map.entry("channel-at-45-sa", slanted(Closure.SA, 13_750, 45, 0)),
          Map.entry("channel-at-20-ground-sa", slanted(Closure.SA, 13_750, 20, 0.5)),
          Map.entry("channel-at-20-re5600-sa", slanted(Closure.SA, 5_600, 20, 0)),
          Map.entry("channel-at-45-re5600-sa", slanted(Closure.SA, 5_600, 45, 0)),
          Map.entry("channel-at-20-re100000-sa", slanted(Closure.SA, 100_000, 20, 0)),
          Map.entry("channel-at-45-re100000-sa", slanted(Closure.SA, 100_000, 45, 0)),
          Map.entry("channel-at-45-ground-sa", slanted(Closure.SA, 13_750, 45, 0.5)),
          Map.entry("channel-at-0-re5600", slanted(Closure.SST, 5_600, 0, 0)),
          Map.entry("channel-at-0", slanted(Closure.SST, 13_750, 0, 0)),
          Map.entry("channel-at-0-re100000", slanted(Closure.SST, 100_000, 0, 0)),
          Map.entry("channel-at-0-re5600-sa", slanted(Closure.SA, 5_600, 0, 0)),
          Map.entry("channel-at-0-sa", slanted(Closure.SA, 13_750, 0, 0)),
          Map.entry("channel-at-0-re100000-sa", slanted(Closure.SA, 100_000, 0, 0)),
          Map.entry("channel-at-10-re5600", slanted(Closure.SST, 5_600, 10, 0)),
          Map.entry("channel-at-10-re100000", slanted(Closure.SST, 100_000, 10, 0)),
          Map.entry("channel-at-10-ground", slanted(Closure.SST, 13_750, 10, 0.5)),
          Map.entry("channel-at-10-re5600-sa", slanted(Closure.SA, 5_600, 10, 0)),
          Map.entry("channel-at-10-re100000-sa", slanted(Closure.SA, 100_000, 10, 0)),
          Map.entry("channel-at-10-ground-sa", slanted(Closure.SA, 13_750, 10, 0.5)),
          Map.entry("channel-at-45-fine", new SlantedGap(Closure.SST, 13_750, 45, 0, 24)),
          Map.entry("two-streams-sst", ShearFlows.twoStreams(Closure.SST)),
          Map.entry("two-streams-sa", ShearFlows.twoStreams(Closure.SA)),
          Map.entry("one-stream-sst", ShearFlows.oneStream(Closure.SST)),
          Map.entry("one-stream-sa", ShearFlows.oneStream(Closure.SA)),
          Map.entry("wall-jet-sst", ShearFlows.wallJet(Closure.SST)),
          Map.entry("wall-jet-sa", ShearFlows.wallJet(Closure.SA)),
          Map.entry("sealed-skirt", SealPractice.skirt()),
          Map.entry("trap-lip", SealPractice.trap()));

  private TurbulentCases() {}

  private static SlantedGap slanted(
      Closure closure, double reynolds, double degrees, double ground) {
    return new SlantedGap(closure, reynolds, degrees, ground, 8, 12, 16);
  }
}
