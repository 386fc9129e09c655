package hemline.viewer.app;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Answers every question for a file with the path that a test has set. */
final class SetAnswer implements FileAsk {
  @Nullable Path answer;

  @Override
  public @Nullable Path lip(Path folder) {
    return answer;
  }

  @Override
  public @Nullable Path target(Path suggestion, String kind, String ending) {
    return answer;
  }

  @Override
  public @Nullable Path folder(Path suggestion) {
    return answer;
  }

  @Override
  public @Nullable Path machine(Path folder) {
    return answer;
  }
}
