package hemline.validation.run;

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
          Map.entry("step-re5000", new TurbulentStep(4_840, 42, 6, true)),
          Map.entry("step-expansion-1.5", new TurbulentStep(44_700, 15, 3, false)),
          Map.entry("sealed-skirt", SealPractice.skirt()),
          Map.entry("trap-lip", SealPractice.trap()));

  private TurbulentCases() {}
}
