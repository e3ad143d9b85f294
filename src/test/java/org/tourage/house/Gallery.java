package org.tourage.house;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.AccessibleObject;
import java.lang.reflect.Constructor;
import java.lang.reflect.Field;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.tourage.formula.Formula;

/**
 * Examples of the types of the library: those that are put in, and all that can be reached from
 * them by their fields and their questions.
 */
final class Gallery {
  /** So many examples of one type are looked into for others. */
  private static final int EXPANDED = 60;

  private static final int KEPT = 6;

  private final Map<Class<?>, List<Object>> examples = new HashMap<>();
  private final Map<Class<?>, Integer> seen = new HashMap<>();
  private final Set<Object> met = Collections.newSetFromMap(new IdentityHashMap<>());
  private final Deque<Object> open = new ArrayDeque<>();

  /** All public types of the library that have instances, by name. */
  static List<Class<?>> types() {
    try {
      Path root =
          Path.of(Formula.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      try (Stream<Path> files = Files.walk(root)) {
        List<Class<?>> found = new ArrayList<>();
        for (Path file : files.sorted(Comparator.comparing(Path::toString)).toList()) {
          String name = root.relativize(file).toString().replace('/', '.').replace('\\', '.');
          if (name.startsWith("org.tourage.")
              && name.endsWith(".class")
              && !name.contains(".internal.")
              && !name.endsWith("package-info.class")) {
            Class<?> type = Class.forName(name.substring(0, name.length() - ".class".length()));
            if (isPublic(type)) {
              found.add(type);
            }
          }
        }
        return found;
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (URISyntaxException | ClassNotFoundException e) {
      throw new AssertionError(e);
    }
  }

  private static boolean isPublic(Class<?> type) {
    for (Class<?> c = type; c != null; c = c.getEnclosingClass()) {
      boolean inside = c.getEnclosingClass() != null && c.getEnclosingClass().isInterface();
      if (!Modifier.isPublic(c.getModifiers()) && !inside) {
        return false;
      }
    }
    return true;
  }

  /** Whether it can have an example: no interface, no holder of static methods. */
  static boolean hasInstances(Class<?> type) {
    if (type.isInterface() || Modifier.isAbstract(type.getModifiers()) && !type.isEnum()) {
      return false;
    }
    return Stream.of(type.getDeclaredFields()).anyMatch(f -> !Modifier.isStatic(f.getModifiers()))
        || type.isRecord()
        || type.isEnum();
  }

  /** Puts objects in, and all that can be reached from them. */
  Gallery put(Object... objects) {
    for (Object object : objects) {
      meet(object);
    }
    while (!open.isEmpty()) {
      look(open.poll());
    }
    return this;
  }

  private void meet(Object object) {
    if (object instanceof Optional<?> optional) {
      optional.ifPresent(this::meet);
    } else if (object instanceof Collection<?> collection) {
      collection.stream().limit(EXPANDED).forEach(this::meet);
    } else if (object instanceof Map<?, ?> map) {
      meet(map.keySet());
      meet(map.values());
    } else if (object instanceof Object[] array) {
      meet(List.of(array));
    } else if (object != null && object.getClass().getName().startsWith("org.tourage.")) {
      if (met.add(object) && seen.merge(type(object), 1, Integer::sum) <= EXPANDED) {
        open.add(object);
        List<Object> known = examples.computeIfAbsent(type(object), t -> new ArrayList<>());
        if (known.size() < KEPT) {
          known.add(object);
        }
      }
    }
  }

  private static Class<?> type(Object object) {
    return object instanceof Enum<?> value ? value.getDeclaringClass() : object.getClass();
  }

  private void look(Object object) {
    for (Class<?> c = object.getClass(); c != null; c = c.getSuperclass()) {
      if (!c.getName().startsWith("org.tourage.")) {
        break;
      }
      for (Field field : c.getDeclaredFields()) {
        if (!field.isSynthetic()
            && !field.getType().isPrimitive()
            && (!Modifier.isStatic(field.getModifiers()) || Modifier.isPublic(c.getModifiers()))) {
          meet(read(field, object));
        }
      }
      for (Method method : c.getDeclaredMethods()) {
        boolean asks =
            Modifier.isPublic(method.getModifiers())
                && method.getParameterCount() == 0
                && !method.isSynthetic()
                && !method.getReturnType().isPrimitive();
        if (asks) {
          meet(ask(method, object));
        }
      }
    }
  }

  /** Opens every public door with plausible arguments and takes in what comes out. */
  Gallery grow() {
    Arguments arguments = new Arguments(this);
    for (Class<?> type : types()) {
      List<Object> holders = new ArrayList<>(of(type));
      holders.add(null);
      for (Method method : methods(type)) {
        boolean isStatic = Modifier.isStatic(method.getModifiers());
        Object holder = isStatic ? null : holders.get(0);
        if ((isStatic || holder != null) && method.getParameterCount() > 0) {
          arguments.of(method).ifPresent(given -> put(ask(method, holder, given)));
        }
      }
      if (hasInstances(type) && of(type).isEmpty()) {
        for (Constructor<?> constructor : type.getConstructors()) {
          arguments.of(constructor).ifPresent(given -> put(make(constructor, given)));
        }
      }
    }
    return this;
  }

  /** The public methods that a type declares, in an order that is always the same. */
  static List<Method> methods(Class<?> type) {
    return Stream.of(type.getDeclaredMethods())
        .filter(m -> Modifier.isPublic(m.getModifiers()) && !m.isSynthetic())
        .filter(m -> !m.getName().equals("main"))
        .sorted(Comparator.comparing(Method::toString))
        .toList();
  }

  private static Object make(Constructor<?> constructor, Object[] arguments) {
    try {
      return constructor.newInstance(arguments);
    } catch (InvocationTargetException e) {
      return Optional.empty();
    } catch (ReflectiveOperationException e) {
      throw new AssertionError(e);
    }
  }

  private static Object read(Field field, Object object) {
    try {
      open(field);
      return field.get(object);
    } catch (IllegalAccessException e) {
      throw new AssertionError(e);
    }
  }

  private static Object ask(Method method, Object object, Object... arguments) {
    try {
      open(method);
      Object answer = method.invoke(object, arguments);
      return answer == null ? Optional.empty() : answer;
    } catch (InvocationTargetException e) {
      return Optional.empty();
    } catch (IllegalAccessException e) {
      throw new AssertionError(e);
    }
  }

  private static void open(AccessibleObject member) {
    member.setAccessible(true);
  }

  /** The examples of a type itself, none if nothing led to one. */
  List<Object> of(Class<?> type) {
    if (type.isEnum()) {
      return List.of(type.getEnumConstants());
    }
    return examples.getOrDefault(type, List.of());
  }

  /** An example that can be given where this type is wanted. */
  Optional<Object> fitting(Class<?> wanted) {
    return examples.entrySet().stream()
        .filter(e -> wanted.isAssignableFrom(e.getKey()))
        .min(Comparator.comparing(e -> e.getKey().getName()))
        .map(e -> e.getValue().get(0));
  }
}
