package hemline.solver.study;

import hemline.shared.profile.LipProfile;
import hemline.shared.result.Estimate;
import hemline.shared.result.SectionResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Builds the table of a ranking from solved sections. */
final class RankingTable {
  private final List<Lip> lips;
  private final Lip baseline;
  private final GapDistribution ground;
  private final List<Double> gaps;
  private final GroundSpeeds speeds;
  private final List<Double> weights;
  private final double suction;

  /** A lip with its solved sections, gap by gap and speed by speed. */
  private record Lip(String name, List<Solved> solved) {
    List<SectionResult> results() {
      return solved.stream().map(s -> s.answer().result()).toList();
    }
  }

  /** A lip that has a place, with its score. */
  private record Scored(Lip lip, Estimate score) {}

  private RankingTable(
      List<Lip> lips, Lip baseline, GapDistribution ground, GroundSpeeds speeds, double suction) {
    this.lips = lips;
    this.baseline = baseline;
    this.ground = ground;
    this.speeds = speeds;
    gaps = ground.gaps();
    weights = speeds.weights(ground);
    this.suction = suction;
  }

  /**
   * The ranking.
   *
   * @param profiles lips with different names, the baseline among them
   * @param baseline index of the baseline
   * @param ground gaps and their weights
   * @param speeds of the ground and their weights
   * @param suction Pa
   * @param solved lip by lip, gap by gap, speed by speed
   */
  static Ranking build(
      List<LipProfile> profiles,
      int baseline,
      GapDistribution ground,
      GroundSpeeds speeds,
      double suction,
      List<Solved> solved) {
    int n = ground.gaps().size() * speeds.speeds().size();
    List<Lip> lips = new ArrayList<>();
    for (int p = 0; p < profiles.size(); p++) {
      lips.add(new Lip(profiles.get(p).name(), solved.subList(p * n, (p + 1) * n)));
    }
    return new RankingTable(lips, lips.get(baseline), ground, speeds, suction).build();
  }

  private Ranking build() {
    RankingNotices notices = new RankingNotices(baseline.name());
    List<Scored> scored = new ArrayList<>();
    for (Lip lip : lips) {
      Estimate score = LeakRatio.ofSums(lip.solved(), baseline.solved(), weights);
      if (score != null) {
        scored.add(new Scored(lip, score));
      }
      missing(lip, score == null, notices);
    }
    scored.sort(
        Comparator.comparingDouble((Scored s) -> s.score().value())
            .thenComparing(s -> s.lip().name()));
    for (Lip lip : lips) {
      notices.results(lip.name(), lip.results());
    }
    List<Ranking.Row> rows = rows(scored);
    List<Ranking.Crossing> certain = new ArrayList<>();
    List<Ranking.Crossing> possible = new ArrayList<>();
    crossings(scored, certain, possible);
    notices.possibleCrossings(possible);
    return new Ranking(baseline.name(), ground, suction, rows, certain, possible, notices.list());
  }

  /** Rank is one more than the number of lips that are clearly better. */
  private List<Ranking.Row> rows(List<Scored> scored) {
    int n = scored.size();
    int[][] order = new int[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < i; j++) {
        order[i][j] = compare(scored.get(i), scored.get(j));
        order[j][i] = -order[i][j];
      }
    }
    double[] best = bestShares(scored);
    List<Ranking.Row> rows = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      int rank = 1;
      List<String> tied = new ArrayList<>();
      for (int j = 0; j < n; j++) {
        if (order[i][j] > 0) {
          rank++;
        } else if (j != i && order[i][j] == 0) {
          tied.add(scored.get(j).lip().name());
        }
      }
      Lip lip = scored.get(i).lip();
      rows.add(
          new Ranking.Row(
              lip.name(),
              rank,
              tied,
              Placement.of(scored.get(i).score()),
              best[i],
              scored.get(i).score(),
              perGap(lip),
              lip.results()));
    }
    rows.sort(Comparator.comparingInt(Ranking.Row::rank)); // stable: by value within a rank
    return rows;
  }

  /**
   * Share of the ground over which each lip leaks least; a gap where several do goes to the first.
   */
  private double[] bestShares(List<Scored> scored) {
    double[] share = new double[scored.size()];
    for (int g = 0; g < gaps.size(); g++) {
      int best = -1;
      double least = Double.POSITIVE_INFINITY;
      for (int i = 0; i < share.length; i++) {
        Estimate ratio = ratio(scored.get(i).lip(), baseline, g);
        if (ratio != null && ratio.value() < least) {
          least = ratio.value();
          best = i;
        }
      }
      if (best >= 0) {
        share[best] += ground.weights().get(g);
      }
    }
    return share;
  }

  /** −1 when a clearly leaks less than b, 1 when clearly more, 0 when they tie. */
  private int compare(Scored a, Scored b) {
    boolean straight = upright(a.lip(), b.lip());
    Estimate ratio =
        straight
            ? LeakRatio.ofSums(a.lip().solved(), b.lip().solved(), weights)
            : LeakRatio.ofSums(b.lip().solved(), a.lip().solved(), weights);
    if (ratio == null) {
      return 0;
    }
    return straight ? Crossings.side(ratio) : -Crossings.side(ratio);
  }

  /**
   * Which of a pair stands above the line in their ratio, so that a pair has one band however it is
   * asked: the baseline always below, else by name.
   */
  private boolean upright(Lip a, Lip b) {
    return b == baseline || a != baseline && a.name().compareTo(b.name()) < 0;
  }

  /** At one gap, over the speeds. */
  private @Nullable Estimate ratio(Lip upper, Lip lower, int g) {
    return LeakRatio.ofSums(at(upper, g), at(lower, g), speeds.weights());
  }

  private List<Solved> at(Lip lip, int g) {
    int n = speeds.speeds().size();
    return lip.solved().subList(g * n, (g + 1) * n);
  }

  private List<Ranking.GapRatio> perGap(Lip lip) {
    List<Ranking.GapRatio> ratios = new ArrayList<>();
    for (int g = 0; g < gaps.size(); g++) {
      Estimate ratio = ratio(lip, baseline, g);
      if (ratio != null) {
        ratios.add(new Ranking.GapRatio(gaps.get(g), ratio));
      }
    }
    return ratios;
  }

  private void crossings(
      List<Scored> scored, List<Ranking.Crossing> certain, List<Ranking.Crossing> possible) {
    for (Scored above : scored) {
      for (Scored below : scored) {
        if (above == below || !upright(above.lip(), below.lip())) {
          continue;
        }
        for (Crossings.Swap swap : Crossings.find(gaps, ratios(above.lip(), below.lip()))) {
          String a = above.lip().name();
          String b = below.lip().name();
          (swap.certain() ? certain : possible)
              .add(
                  swap.firstLeaksLessBelow()
                      ? new Ranking.Crossing(a, b, swap.gap())
                      : new Ranking.Crossing(b, a, swap.gap()));
        }
      }
    }
    Comparator<Ranking.Crossing> order =
        Comparator.comparingDouble(Ranking.Crossing::gap)
            .thenComparing(Ranking.Crossing::first)
            .thenComparing(Ranking.Crossing::second);
    certain.sort(order);
    possible.sort(order);
  }

  private List<@Nullable Estimate> ratios(Lip above, Lip below) {
    List<@Nullable Estimate> ratios = new ArrayList<>();
    for (int g = 0; g < gaps.size(); g++) {
      ratios.add(ratio(above, below, g));
    }
    return ratios;
  }

  private void missing(Lip lip, boolean leftOut, RankingNotices notices) {
    List<Double> missing = new ArrayList<>();
    for (int g = 0; g < gaps.size(); g++) {
      for (int v = 0; v < speeds.speeds().size(); v++) {
        if (!LeakRatio.comparable(at(lip, g).get(v), at(baseline, g).get(v))) {
          missing.add(gaps.get(g));
          break;
        }
      }
    }
    notices.missing(lip.name(), leftOut, missing);
  }
}
