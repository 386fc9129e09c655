package hemline.viewer.model;

import hemline.shared.profile.LipDrawing;
import hemline.viewer.project.RescueStore.Open;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Where a lip comes from.
 *
 * @param file its file; null for one that has none yet
 * @param digest of the file as it was last read or written here; empty where there was none
 * @param saved the lip as its file, or the list it was taken from, holds it
 */
record LipOrigin(@Nullable Path file, String digest, LipDrawing saved) {

  /**
   * A lip with its file, to be put by.
   *
   * @param from null where nothing is known of it
   */
  static Open open(@Nullable LipOrigin from, LipDrawing lip, Setting under) {
    return new Open(
        lip, under.numbers(), from == null ? null : from.file(), from == null ? "" : from.digest());
  }

  /** A drawing that no lip equals, for a lip whose file is not known. */
  static LipDrawing blank(LipDrawing like) {
    return like.named("");
  }
}
