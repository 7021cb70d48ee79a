package org.demebook.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import java.io.IOException;
import java.io.InputStreamReader;
import java.lang.reflect.Method;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every word of the pages is there in both languages, and stands in a message bundle. */
class MessagesTest {
    private static final Path TEMPLATES = Path.of("src", "main", "resources", "templates");
    // what is printed and checked against paper stays as it was issued
    private static final Set<String> PAPER = Set.of("handover/sheet.html", "handover/check.html", "handover/rows.html");
    private static final Pattern PARAMETER = Pattern.compile("\\{\\s*([a-zA-Z]\\w*)");

    // what is left of a template once tags of Qute and of HTML are taken out: words that no bundle has
    private static final List<Pattern> TAGS = Stream.of(
                    "\\{!.*?!\\}", "\\{[^{}]*\\}", "<!--.*?-->", "<(script|style)\\b.*?</\\1>", "<[^>]*>", "&#?\\w+;")
            .map(tag -> Pattern.compile(tag, Pattern.DOTALL))
            .toList();
    private static final Set<String> NAMES =
            Set.of("Demebook", "English", "Deutsch", "cm", "in", "g", "F", "MK", "QR", "PDF", "CSV");

    @Test
    void every_word_is_there_in_german() throws Exception {
        for (var bundle : bundles()) {
            var german = properties(bundle, "_de");
            var wanted = keys(bundle);
            assertThat(german.stringPropertyNames())
                    .as("messages/%s_de.properties", name(bundle))
                    .containsExactlyInAnyOrderElementsOf(wanted);
            for (var key : wanted) {
                assertThat(german.getProperty(key))
                        .as("%s of %s", key, name(bundle))
                        .isNotBlank();
            }
        }
    }

    @Test
    void a_german_sentence_says_every_figure_that_the_english_one_says() throws Exception {
        for (var bundle : bundles()) {
            var german = properties(bundle, "_de");
            for (var method : bundle.getMethods()) {
                var english = method.getAnnotation(Message.class).value();
                if (!english.equals(Message.DEFAULT_VALUE)) {
                    assertThat(parameters(german.getProperty(method.getName()), method))
                            .as("%s of %s", method.getName(), name(bundle))
                            .isEqualTo(parameters(english, method));
                }
            }
        }
    }

    @Test
    void no_template_has_words_of_its_own() throws IOException {
        try (Stream<Path> files = Files.walk(TEMPLATES)) {
            for (var file : files.filter(path -> path.toString().endsWith(".html"))
                    .filter(path -> !PAPER.contains(TEMPLATES.relativize(path).toString()))
                    .toList()) {
                var text = Files.readString(file);
                for (var tag : TAGS) {
                    text = tag.matcher(text).replaceAll(" ");
                }
                var words = Pattern.compile("[\\p{L}]{2,}")
                        .matcher(text)
                        .results()
                        .map(match -> match.group())
                        .filter(word -> !NAMES.contains(word))
                        .toList();
                assertThat(words).as("%s", file).isEmpty();
            }
        }
    }

    private static List<Class<?>> bundles() {
        var found = new ClassFileImporter()
                .importPackages("org.demebook.web").stream()
                        .filter(type -> type.isAnnotatedWith(MessageBundle.class))
                        .<Class<?>>map(JavaClass::reflect)
                        .toList();
        assertThat(found).isNotEmpty();
        return found;
    }

    private static Set<String> keys(Class<?> bundle) {
        return Arrays.stream(bundle.getMethods())
                .flatMap(MessagesTest::keys)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static Stream<String> keys(Method method) {
        if (!method.getAnnotation(Message.class).value().equals(Message.DEFAULT_VALUE)) {
            return Stream.of(method.getName());
        }
        // one word for each constant of an enum; Qute's rule for names with an underscore
        var constants = Arrays.stream(method.getParameterTypes()[0].getEnumConstants())
                .map(constant -> ((Enum<?>) constant).name())
                .toList();
        var between = constants.stream().anyMatch(constant -> constant.contains("_")) ? "_$" : "_";
        return constants.stream().map(constant -> method.getName() + between + constant);
    }

    private static Set<String> parameters(String message, Method method) {
        var names = Arrays.stream(method.getParameters())
                .map(parameter -> parameter.getName())
                .collect(Collectors.toSet());
        return PARAMETER
                .matcher(message)
                .results()
                .map(match -> match.group(1))
                .filter(names::contains)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static String name(Class<?> bundle) {
        return bundle.getAnnotation(MessageBundle.class).value();
    }

    private static Properties properties(Class<?> bundle, String suffix) throws IOException {
        var file = "/messages/" + name(bundle) + suffix + ".properties";
        var properties = new Properties();
        try (var reader = new InputStreamReader(
                Objects.requireNonNull(MessagesTest.class.getResourceAsStream(file), file), StandardCharsets.UTF_8)) {
            properties.load(reader);
        }
        return properties;
    }
}
