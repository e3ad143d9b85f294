package org.tourage.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A chain of calls never drops what came before without a word. */
class ChainsTest {
  /** The steps by which something grows longer. */
  private static final Set<String> COLLECTING =
      Set.of("then", "fold", "factor", "part", "with", "build", "move", "to", "air", "left", "mix");

  /** How something starts. */
  private static final Pattern START =
      Pattern.compile("(of|from|per|parse|named|in|start|seed|builtIn|flat)([A-Z0-9].*)?");

  @Test
  void noStaticFactoryHasTheNameOfAStepOfTheChain() {
    TreeSet<String> wrong = new TreeSet<>();
    for (Class<?> type : Gallery.types()) {
      List<Method> methods = Gallery.methods(type);
      for (Method factory : methods) {
        boolean makes =
            Modifier.isStatic(factory.getModifiers())
                && type.isAssignableFrom(factory.getReturnType());
        if (makes && steps(type).anyMatch(factory.getName()::equals)) {
          wrong.add(type.getName() + "." + factory.getName());
        }
      }
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void whatCollectsStepAfterStepStartsWithAWordThatIsNoStep() {
    TreeSet<String> wrong = new TreeSet<>();
    for (Class<?> type : Gallery.types()) {
      boolean collects = !type.isInterface() && steps(type).anyMatch(COLLECTING::contains);
      for (Method factory : Gallery.methods(type)) {
        boolean makes =
            Modifier.isStatic(factory.getModifiers())
                && type.isAssignableFrom(factory.getReturnType());
        if (collects && makes && !START.matcher(factory.getName()).matches()) {
          wrong.add(type.getName() + "." + factory.getName());
        }
      }
    }
    assertThat(wrong).isEmpty();
  }

  /**
   * What can be called on an object of the type and gives one of it. A static factory of a class
   * can be called on an object as well, and drops it; one of an interface can't.
   */
  private static Stream<String> steps(Class<?> type) {
    return Stream.of(type.getMethods())
        .filter(m -> !Modifier.isStatic(m.getModifiers()))
        .filter(m -> type.isAssignableFrom(m.getReturnType()))
        .map(Method::getName);
  }
}
