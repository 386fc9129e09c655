package hemline.viewer.app;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Asks for a place on disk; null when the user thinks better of it. */
public interface FileAsk {

  /** A lip file or drawing to open. */
  @Nullable Path lip(Path folder);

  /** Where to write a file. */
  @Nullable Path target(Path suggestion, String kind, String ending);

  /** A folder. */
  @Nullable Path folder(Path suggestion);

  /** A rig file to open; none where nobody can be asked. */
  default @Nullable Path rig(Path folder) {
    return null;
  }

  /** A machine file to open. */
  @Nullable Path machine(Path folder);
}
