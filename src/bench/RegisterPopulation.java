import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.regex.Pattern;

/**
 * Registers a population through the interface of a running server, always the same one: forty founders, then litters over
 * thirty years out of parents of three to ten years, a sixth of them by the same few males.
 *
 * <pre>java RegisterPopulation.java http://127.0.0.1:8080 ADMINISTRATOR-PASSWORD ANIMALS FOLDER</pre>
 *
 * <p>Writes into the folder: {@code token} to ask with, {@code population} its code, {@code numbers} of all animals in the
 * order of their births.
 */
class RegisterPopulation {
    private static final int FOUNDERS = 40;
    private static final int COLLECTIONS = 25;
    private static final int YEARS = 30;
    private static final int FIRST_YEAR = 1995;

    private final HttpClient http = HttpClient.newHttpClient();
    private final Random random = new Random(4711);
    private final String server;
    private final String code = "B" + Long.toString(System.currentTimeMillis() / 1000 % 1_000_000, 36).toUpperCase();
    private String token = "";

    /** @param bornIn 0 for a founder, who may breed at once */
    private record Animal(String number, boolean female, int bornIn) {}

    private final List<String> collections = new ArrayList<>();
    private final List<Animal> animals = new ArrayList<>();

    RegisterPopulation(String server) {
        this.server = server;
    }

    public static void main(String... args) throws Exception {
        var folder = Path.of(args[3]);
        Files.createDirectories(folder);
        var population = new RegisterPopulation(args[0]);
        population.found(args[1]);
        population.breed(Integer.parseInt(args[2]));
        Files.writeString(folder.resolve("token"), population.token);
        Files.writeString(folder.resolve("population"), population.code);
        Files.write(folder.resolve("numbers"), population.animals.stream().map(Animal::number).toList());
    }

    private void found(String password) throws Exception {
        token = field("access_token", post("/api/v1/tokens", "{'name': 'administrator', 'password': '" + password + "'}"));
        post(
                "/api/v1/populations",
                "{'code': '" + code + "', 'name': 'Benchmark', 'taxon': 'Boa', 'locality': 'nowhere',"
                        + " 'birthMode': 'live-bearing'}");
        for (int i = 0; i < COLLECTIONS; i++) {
            var opened = post("/api/v1/populations/" + code + "/collections", "{'label': 'rack " + i + "'}");
            collections.add(field("id", opened));
        }
        for (int i = 0; i < FOUNDERS; i++) {
            register(i % 2 == 0, 0, "'origin': 'wild-caught'");
        }
    }

    private void breed(int size) throws Exception {
        int aYear = (size - FOUNDERS + YEARS - 1) / YEARS;
        for (int year = FIRST_YEAR; animals.size() < size; year++) {
            int born = 0;
            while (born < aYear && animals.size() < size) {
                var dam = parent(true, year);
                var sire = random.nextInt(6) == 0 ? animals.get(1 + 2 * random.nextInt(3)) : parent(false, year);
                for (int young = 1 + random.nextInt(8); young > 0 && born < aYear && animals.size() < size; young--) {
                    register(
                            random.nextBoolean(),
                            year,
                            "'origin': 'captive-bred', 'dam': '" + dam.number() + "', 'sire': {'kind': 'known', 'animal': '"
                                    + sire.number() + "'}");
                    born++;
                }
            }
        }
    }

    private Animal parent(boolean female, int year) {
        while (true) {
            var animal = animals.get(random.nextInt(animals.size()));
            int age = year - animal.bornIn();
            boolean breeds = animal.bornIn() == 0 ? year < FIRST_YEAR + 8 : age >= 3 && age <= 10;
            if (animal.female() == female && breeds) {
                return animal;
            }
        }
    }

    private void register(boolean female, int bornIn, String more) throws Exception {
        var born = bornIn == 0 ? "" : "'born': '" + bornIn + "-06-15', ";
        var died = bornIn < FIRST_YEAR + 15 ? "'died': '" + Math.max(bornIn + 14, 2008) + "', " : "";
        var answer = post(
                "/api/v1/populations/" + code + "/animals",
                "{'collection': '" + collections.get(animals.size() % COLLECTIONS) + "', 'sex': '" + (female ? "female" : "male") + "', " + born + died + more + "}");
        animals.add(new Animal(field("number", answer), female, bornIn));
    }

    private String post(String path, String body) throws IOException, InterruptedException {
        var request = HttpRequest.newBuilder(URI.create(server + path))
                .header("Content-Type", "application/json")
                .header("Idempotency-Key", UUID.randomUUID().toString())
                .POST(BodyPublishers.ofString(body.replace('\'', '"')));
        if (!token.isEmpty()) {
            request.header("Authorization", "Bearer " + token);
        }
        var response = http.send(request.build(), BodyHandlers.ofString());
        if (response.statusCode() / 100 != 2) {
            throw new IOException(path + " answered " + response.statusCode() + ": " + response.body());
        }
        return response.body();
    }

    private static String field(String name, String json) {
        var found = Pattern.compile('"' + name + "\":\"([^\"]+)\"").matcher(json);
        if (!found.find()) {
            throw new IllegalStateException("no " + name + " in " + json);
        }
        return found.group(1);
    }
}
