package org.tourage.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.Serializable;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What holds for every public type of the library, each by an example of it. */
class EveryTypeTest {
  private static final Gallery GALLERY = Exhibits.all();

  /** What is no value: builders, readers, and the solvers of the equations of heat. */
  private static final Set<String> MACHINES =
      Set.of(
          "Setting",
          "RecipeFile",
          "Catalogue",
          "PackLabel",
          "Composition$Builder",
          "FormulaBuilder",
          "FormulaBuilder$StageBuilder",
          "Ingredient$Builder",
          "DryingBody",
          "DryingBody$Material",
          "DryingBody$Run",
          "GasBalance",
          "LayeredSlab",
          "LayeredSlab$State",
          "Pores",
          "SchedulingProblem$Builder");

  /** What holds functions or stands once for all, and is only equal to itself. */
  private static final Set<String> WITHOUT_EQUALITY =
      Set.of(
          "FormulaTargets",
          "FormulaTargets$Solution",
          "Propagation",
          "BakeryUnit",
          "FlourSpecification",
          "LabelText$Reading");

  private static String shortName(Class<?> type) {
    return type.getName().substring(type.getPackageName().length() + 1);
  }

  private static boolean isMachine(Class<?> type) {
    return MACHINES.contains(shortName(type));
  }

  private static List<Class<?>> values() {
    return Gallery.types().stream()
        .filter(Gallery::hasInstances)
        .filter(t -> !isMachine(t))
        .toList();
  }

  @Test
  void everyValueIsSerializable() {
    assertThat(values()).hasSizeGreaterThan(200);
    assertThat(values().stream().filter(t -> !Serializable.class.isAssignableFrom(t))).isEmpty();
  }

  @Test
  void everyValueHasAnExample() {
    List<String> without =
        values().stream().filter(t -> GALLERY.of(t).isEmpty()).map(Class::getName).toList();
    assertThat(without).isEmpty();
  }

  @Test
  void everySerializableTypeTravelsThroughAStreamUnchanged() throws Exception {
    List<String> wrong = new ArrayList<>();
    for (Class<?> type : Gallery.types()) {
      for (Object example : GALLERY.of(type)) {
        if (example instanceof Serializable) {
          try {
            Object copy = roundTrip(example);
            if (!String.valueOf(copy).equals(String.valueOf(example))
                && !WITHOUT_EQUALITY.contains(shortName(type))) {
              wrong.add(type.getName() + " comes back as " + copy + ", not " + example);
            } else if (!WITHOUT_EQUALITY.contains(shortName(type))
                && !(copy.equals(example) && copy.hashCode() == example.hashCode())) {
              wrong.add(type.getName() + " is not equal to what comes back");
            }
          } catch (IOException e) {
            wrong.add(type.getName() + ": " + e);
          }
          break;
        }
      }
    }
    assertThat(wrong).isEmpty();
  }

  /** A result is a value: what is put together from the same inputs is equal. */
  @Test
  void everySerializableTypeHasValueEquality() {
    List<String> wrong =
        values().stream()
            .filter(t -> !WITHOUT_EQUALITY.contains(shortName(t)))
            .filter(t -> !hasEquality(t))
            .map(Class::getName)
            .toList();
    assertThat(wrong).isEmpty();
  }

  private static boolean hasEquality(Class<?> type) {
    if (type.isRecord() || type.isEnum()) {
      return true;
    }
    for (Class<?> c = type; c != Object.class; c = c.getSuperclass()) {
      for (Method method : c.getDeclaredMethods()) {
        if (method.getName().equals("equals") && method.getParameterCount() == 1) {
          return true;
        }
      }
    }
    return false;
  }

  private static Object roundTrip(Object value) throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
      out.writeObject(value);
    }
    try (ObjectInputStream in =
        new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
      return in.readObject();
    }
  }
}
