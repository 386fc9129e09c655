package hemline.solver.spark;

import hemline.shared.result.SectionResult;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.study.BatchRunner;
import hemline.solver.study.BatchStudy;
import hemline.solver.study.RunOptions;
import java.util.List;
import java.util.function.BiConsumer;
import org.apache.spark.SparkConf;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.rdd.RDD;
import scala.reflect.ClassTag$;
import scala.runtime.AbstractFunction2;
import scala.runtime.BoxedUnit;

/**
 * Solves a batch on a Spark cluster. Lost executors, retries and stragglers are the engine's
 * business; of a part that was solved twice it hands over one answer.
 */
public final class SparkRunner implements BatchRunner {
  /** Between two looks whether the batch is cancelled, ms. */
  private static final long LOOK = 50;

  private final String master;

  /**
   * A cluster.
   *
   * @param master such as {@code local[2]} or {@code spark://host:7077}
   */
  public SparkRunner(String master) {
    this.master = master;
  }

  @Override
  public void solve(
      List<SealSection> sections,
      RunOptions options,
      CancelToken cancel,
      ProgressListener progress,
      BiConsumer<Integer, SectionResult> taker) {
    if (sections.isEmpty() || cancel.isCancelled()) {
      return;
    }
    List<String> parts =
        Parts.of(sections).stream()
            .map(
                part ->
                    new SectionText.Part(part, part.stream().map(sections::get).toList(), options))
            .map(SectionText::of)
            .toList();
    Thread watch = null;
    try (JavaSparkContext engine = new JavaSparkContext(settings())) {
      watch = new Thread(() -> watch(engine, cancel), "hemline-watch");
      watch.setDaemon(true);
      watch.start();
      RDD<String> asked = engine.parallelize(parts, parts.size()).rdd();
      engine
          .sc()
          .runJob(
              asked,
              new SolvePart(),
              new Taker(sections, progress, taker),
              ClassTag$.MODULE$.apply(String.class));
    } catch (Exception e) {
      // the engine throws what its Scala methods do not declare
      if (!cancel.isCancelled()) {
        throw new IllegalStateException("the cluster " + master + " gave up: " + first(e), e);
      }
    } finally {
      if (watch != null) {
        watch.interrupt();
      }
    }
  }

  private SparkConf settings() {
    SparkConf settings =
        new SparkConf()
            .setMaster(master)
            .setAppName("Hemline batch")
            .set("spark.ui.enabled", "false")
            .set("spark.task.maxFailures", "8")
            // a section that hangs on one machine is tried on another
            .set("spark.executor.extraJavaOptions", "-XX:+UseSerialGC")
            .set("spark.speculation", "true")
            .set("spark.speculation.multiplier", "4")
            .set("spark.job.interruptOnCancel", "true");
    return master.startsWith("local")
        ? settings
        : settings.setJars(Shipment.jars().toArray(String[]::new));
  }

  private static void watch(JavaSparkContext engine, CancelToken cancel) {
    try {
      while (!cancel.isCancelled()) {
        Thread.sleep(LOOK);
      }
      engine.sc().cancelAllJobs();
    } catch (InterruptedException e) {
      // the batch is over
    }
  }

  private static String first(Throwable e) {
    String message = String.valueOf(e.getMessage());
    return message.lines().findFirst().orElse(e.getClass().getSimpleName());
  }

  /** Takes the answers on the machine that asked, one part at a time. */
  private static final class Taker extends AbstractFunction2<Object, String, BoxedUnit> {
    private final List<SealSection> sections;
    private final ProgressListener progress;
    private final BiConsumer<Integer, SectionResult> taker;
    private final double whole;
    private double done;

    Taker(
        List<SealSection> sections,
        ProgressListener progress,
        BiConsumer<Integer, SectionResult> taker) {
      this.sections = sections;
      this.progress = progress;
      this.taker = taker;
      this.whole = sections.stream().mapToDouble(BatchStudy::cost).sum();
    }

    @Override
    public BoxedUnit apply(Object part, String text) {
      SectionText.Answers answers = SectionText.read(text, SectionText.Answers.class);
      for (int k = 0; k < answers.numbers().size(); k++) {
        int number = answers.numbers().get(k);
        taker.accept(number, answers.results().get(k));
        done += BatchStudy.cost(sections.get(number));
        progress.progress(Math.min(1, done / whole), sections.get(number).name());
      }
      return BoxedUnit.UNIT;
    }
  }
}
