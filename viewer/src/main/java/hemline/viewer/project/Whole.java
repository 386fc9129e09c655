package hemline.viewer.project;

import java.lang.reflect.AnnotatedParameterizedType;
import java.lang.reflect.AnnotatedType;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Looks for what is missing in a value that was read from a file. */
final class Whole {
  private Whole() {}

  /**
   * Name of the first part that is missing in a record or in the records, lists and maps inside it
   * although its type does not allow that; null when all is there.
   */
  static @Nullable String missing(Record value) {
    for (RecordComponent part : value.getClass().getRecordComponents()) {
      String found = missing(part.getName(), read(value, part), part.getAnnotatedType());
      if (found != null) {
        return found;
      }
    }
    return null;
  }

  private static @Nullable String missing(
      String name, @Nullable Object value, @Nullable AnnotatedType type) {
    if (value == null) {
      return type != null && type.isAnnotationPresent(Nullable.class) ? null : name;
    }
    if (value instanceof Record part) {
      return missing(part);
    }
    if (value instanceof Collection<?> list) {
      return first(name, list, argument(type, 0));
    }
    return value instanceof Map<?, ?> map ? first(name, map.values(), argument(type, 1)) : null;
  }

  private static @Nullable String first(
      String name, Collection<?> values, @Nullable AnnotatedType type) {
    for (Object value : values) {
      String found = missing(name, value, type);
      if (found != null) {
        return found;
      }
    }
    return null;
  }

  private static @Nullable AnnotatedType argument(@Nullable AnnotatedType type, int place) {
    List<AnnotatedType> types =
        type instanceof AnnotatedParameterizedType p
            ? List.of(p.getAnnotatedActualTypeArguments())
            : List.of();
    return place < types.size() ? types.get(place) : null;
  }

  private static @Nullable Object read(Record value, RecordComponent part) {
    try {
      part.getAccessor().setAccessible(true);
      return part.getAccessor().invoke(value);
    } catch (IllegalAccessException | InvocationTargetException e) {
      throw new IllegalStateException(e);
    }
  }
}
