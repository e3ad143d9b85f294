package org.tourage.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.AnnotatedType;
import java.lang.reflect.Array;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tourage.advice.BakeryException;

/** What a public door does with a null that it does not allow. */
class NullsTest {
  private static final Gallery GALLERY = Exhibits.all();
  private static final Set<String> ANY_OBJECT = Set.of("equals", "compareTo");

  @ParameterizedTest
  @ValueSource(strings = {"day", "command", "sheet", "makeup", "lamination"})
  void aNullIsRefusedByItsNameAtEveryDoorOf(String room) throws Exception {
    List<String> wrong = new ArrayList<>();
    int tried = 0;
    Arguments arguments = new Arguments(GALLERY);
    for (Class<?> type : Gallery.types()) {
      if (!type.getPackageName().equals("org.tourage." + room)) {
        continue;
      }
      List<Executable> doors = new ArrayList<>(List.of(type.getConstructors()));
      doors.addAll(Gallery.methods(type));
      for (Executable door : doors) {
        Optional<Object> holder = GALLERY.of(type).stream().findFirst();
        boolean free = door instanceof Constructor || Modifier.isStatic(door.getModifiers());
        Optional<Object[]> given = arguments.of(door);
        boolean made = type.isEnum() && door.getName().equals("valueOf");
        if (ANY_OBJECT.contains(door.getName())
            || made
            || given.isEmpty()
            || (!free && holder.isEmpty())
            || Modifier.isAbstract(door.getModifiers())) {
          continue;
        }
        for (int i = 0; i < door.getParameterCount(); i++) {
          if (door.getParameterTypes()[i].isPrimitive()
              || mayBeNull(door.getAnnotatedParameterTypes()[i])) {
            continue;
          }
          for (Object nothing : nothings(door.getParameterTypes()[i])) {
            Object[] with = given.get().clone();
            with[i] = nothing;
            tried++;
            String said = refusal(door, free ? null : holder.get(), with);
            String name = door.getParameters()[i].getName();
            boolean named = said.startsWith("NullPointerException: " + name);
            boolean refused = said.startsWith("BakeryException") && !said.contains("null");
            if (!named && !refused) {
              String what = nothing == null ? name : name + " of nothing";
              wrong.add(signature(door) + " " + what + ": " + said);
            }
          }
        }
      }
    }
    assertThat(tried).isPositive();
    assertThat(wrong).isEmpty();
  }

  /** Null, and a list or an array with a null in it. */
  private static List<Object> nothings(Class<?> type) {
    List<Object> nothings = new ArrayList<>();
    nothings.add(null);
    if (type == List.class) {
      nothings.add(Collections.singletonList(null));
    } else if (type.isArray() && !type.getComponentType().isPrimitive()) {
      nothings.add(Array.newInstance(type.getComponentType(), 1));
    }
    return nothings;
  }

  private static String signature(Executable door) {
    return door.getDeclaringClass().getSimpleName()
        + "."
        + door.getName().replaceAll(".*\\.", "")
        + Stream.of(door.getParameterTypes()).map(Class::getSimpleName).toList();
  }

  private static boolean mayBeNull(AnnotatedType type) {
    return type.isAnnotationPresent(Nullable.class);
  }

  private static String refusal(Executable door, @Nullable Object holder, Object[] arguments)
      throws ReflectiveOperationException {
    try {
      Object answer;
      if (door instanceof Constructor<?> constructor) {
        answer = constructor.newInstance(arguments);
      } else {
        door.setAccessible(true);
        answer = ((Method) door).invoke(holder, arguments);
      }
      return "gives " + (answer == null ? "null" : "a " + answer.getClass().getSimpleName());
    } catch (InvocationTargetException e) {
      Throwable cause = e.getCause();
      return cause instanceof BakeryException
          ? "BakeryException: " + cause.getMessage()
          : cause.getClass().getSimpleName() + ": " + cause.getMessage();
    }
  }
}
