package org.tourage.house;

import java.lang.reflect.Executable;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Proxy;
import java.lang.reflect.Type;
import java.lang.reflect.WildcardType;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.tourage.quantity.Amounts;

/** Plausible arguments for any door of the library, from what stands in a gallery. */
final class Arguments {
  private static final Map<String, Object> QUANTITIES =
      Map.of(
          "Mass", Amounts.grams(300),
          "Temperature", Amounts.celsius(24),
          "Time", Amounts.minutes(30),
          "Length", Amounts.millimetres(40),
          "Volume", Amounts.millilitres(200),
          "Dimensionless", Amounts.percent(20));

  private final Gallery gallery;

  Arguments(Gallery gallery) {
    this.gallery = gallery;
  }

  /** One argument for each parameter, empty if one can't be made up. */
  Optional<Object[]> of(Executable door) {
    Type[] types = door.getGenericParameterTypes();
    Object[] arguments = new Object[types.length];
    for (int i = 0; i < types.length; i++) {
      Optional<Object> argument = of(types[i], door.getParameterTypes()[i]);
      if (argument.isEmpty()) {
        return Optional.empty();
      }
      arguments[i] = argument.get();
    }
    return Optional.of(arguments);
  }

  private Optional<Object> of(Type type, Class<?> raw) {
    Type inside = type instanceof ParameterizedType of ? of.getActualTypeArguments()[0] : null;
    inside = inside instanceof WildcardType wild ? wild.getUpperBounds()[0] : inside;
    String kind = inside instanceof Class<?> c ? c.getSimpleName() : "";
    if (raw == int.class) {
      return Optional.of(2);
    } else if (raw == long.class) {
      return Optional.of(2L);
    } else if (raw == double.class) {
      return Optional.of(2.0);
    } else if (raw == boolean.class) {
      return Optional.of(true);
    } else if (raw == String.class || raw == CharSequence.class) {
      return Optional.of("butter");
    } else if (raw == LocalDate.class) {
      return Optional.of(LocalDate.of(2026, 3, 28));
    } else if (raw == ZoneId.class) {
      return Optional.of(ZoneId.of("UTC"));
    } else if (raw == Locale.class) {
      return Optional.of(Locale.ROOT);
    } else if (raw == Random.class) {
      return Optional.of(new Random(7));
    } else if (raw.isAssignableFrom(org.tourage.quantity.Amount.class) && raw != Object.class) {
      return Optional.ofNullable(QUANTITIES.get(kind));
    } else if (raw == List.class && inside instanceof Class<?> element) {
      return element == String.class
          ? Optional.of(List.of("butter"))
          : of(element, element).map(List::of);
    } else if (raw.isArray()) {
      return of(raw.getComponentType(), raw.getComponentType())
          .map(
              value -> {
                if (raw.getComponentType().isPrimitive()) {
                  Object array = java.lang.reflect.Array.newInstance(raw.getComponentType(), 1);
                  java.lang.reflect.Array.set(array, 0, value);
                  return array;
                }
                Object[] array =
                    (Object[]) java.lang.reflect.Array.newInstance(raw.getComponentType(), 1);
                array[0] = value;
                return array;
              });
    } else if (raw.getName().startsWith("java.util.function.")) {
      // good enough for what is refused before it is called
      return Optional.of(
          Proxy.newProxyInstance(
              Arguments.class.getClassLoader(),
              new Class<?>[] {raw},
              (proxy, method, given) -> {
                throw new IllegalStateException("not to be called");
              }));
    } else if (raw.isEnum()) {
      return Optional.of(raw.getEnumConstants()[0]);
    } else if (raw.getName().startsWith("org.tourage.")) {
      return gallery.fitting(raw);
    }
    return Optional.empty();
  }
}
