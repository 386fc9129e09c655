package hemline.viewer.screen;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * Where the machine page finds files. Suppliers of lists are asked beside the screen's thread.
 *
 * @param machines machine files to offer
 * @param lips lip files by the names of their lips
 * @param chooser asks for another machine file
 * @param target asks where a changed machine goes, by a suggestion
 */
public record MachineFiles(
    Supplier<List<Path>> machines,
    Supplier<Map<String, Path>> lips,
    Supplier<@Nullable Path> chooser,
    UnaryOperator<@Nullable Path> target) {}
