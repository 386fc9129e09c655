package hemline.solver.spark;

import hemline.shared.result.SectionResult;
import hemline.shared.result.SolveStatus;
import hemline.shared.section.SealSection;
import hemline.solver.flow.CancelToken;
import hemline.solver.flow.ProgressListener;
import hemline.solver.refine.FamilySolver;
import hemline.solver.study.RunOptions;
import hemline.solver.study.SectionStudy;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import scala.collection.Iterator;
import scala.runtime.AbstractFunction1;

/** Solves a part: the answer depends on the part alone, wherever and how often it is asked. */
final class SolvePart extends AbstractFunction1<Iterator<String>, String> implements Serializable {
  private static final long serialVersionUID = 1;

  @Override
  public String apply(Iterator<String> texts) {
    SectionText.Part part = SectionText.read(texts.next(), SectionText.Part.class);
    RunOptions asked = part.options();
    RunOptions alone = new RunOptions(asked.level(), asked.closure(), asked.modelSpread(), 1);
    SectionStudy study = new SectionStudy(new FamilySolver());
    List<SectionResult> results = new ArrayList<>();
    for (SealSection section : part.sections()) {
      SectionResult result =
          study.run(section, alone, new CancelToken(), ProgressListener.NONE).result();
      // the engine interrupts what it no longer wants
      if (result.status() == SolveStatus.CANCELLED) {
        throw new CancellationException("stopped on request");
      }
      results.add(result);
    }
    return SectionText.of(new SectionText.Answers(part.numbers(), results));
  }
}
