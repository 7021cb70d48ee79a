package org.demebook.web;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.PlaywrightException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** The browser of all browser tests: a real Chromium, started once for this JVM, without a window. */
final class Chromium {
    private static final List<String> NAMES =
            List.of("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome");
    private static final List<String> ARGUMENTS = List.of(
            "--no-sandbox",
            "--disable-gpu",
            "--disable-quic",
            "--disable-dev-shm-usage",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
            "--force-color-profile=srgb",
            "--font-render-hinting=none");
    private static final int INSTALLATION_MINUTES = 8;
    private static final String WHAT_TO_DO = """
            The browser tests need Chromium, and there is none on the PATH (%s). %s
            Install it by your system's means (Debian: apt-get install chromium), or leave the browser tests out: -DskipITs.""";

    private static Playwright playwright;
    private static Browser browser;

    private Chromium() {}

    /** The browser; the first call looks for it, and installs it where it may. */
    static synchronized Browser browser() {
        if (browser == null) {
            var program = onThePath().or(Chromium::installedByApt);
            var environment = Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", program.isPresent() ? "1" : "");
            playwright = Playwright.create(new Playwright.CreateOptions().setEnv(environment));
            var options = new BrowserType.LaunchOptions().setArgs(ARGUMENTS);
            program.ifPresent(options::setExecutablePath);
            browser = launched(options);
            Runtime.getRuntime().addShutdownHook(new Thread(playwright::close, "browser-last"));
        }
        return browser;
    }

    private static Browser launched(BrowserType.LaunchOptions options) {
        try {
            return playwright.chromium().launch(options);
        } catch (PlaywrightException e) {
            playwright.close();
            throw new IllegalStateException(
                    WHAT_TO_DO.formatted(String.join(", ", NAMES), "Nor could one be fetched or started: " + e), e);
        }
    }

    private static Optional<Path> onThePath() {
        var folders = System.getenv().getOrDefault("PATH", "").split(java.io.File.pathSeparator);
        return NAMES.stream()
                .flatMap(name -> Stream.of(folders).map(folder -> Path.of(folder, name)))
                .filter(Files::isExecutable)
                .findFirst();
    }

    /** As root on Debian, by its own means; waits for whoever else is installing. Nowhere else is anything installed. */
    private static Optional<Path> installedByApt() {
        boolean mayInstall =
                System.getProperty("user.name").equals("root") && Files.isExecutable(Path.of("/usr/bin/apt-get"));
        if (!mayInstall) {
            return Optional.empty();
        }
        System.out.println("There is no Chromium on the PATH; apt-get installs one (about 100 MB)");
        if (!apt("update", "-qq")
                || !apt("install", "-y", "-qq", "--no-install-recommends", "chromium")
                || onThePath().isEmpty()) {
            throw new IllegalStateException(WHAT_TO_DO.formatted(
                    String.join(", ", NAMES), "apt-get could not install it; what it said stands above."));
        }
        return onThePath();
    }

    private static boolean apt(String... arguments) {
        var command = Stream.concat(
                        Stream.of("apt-get", "-o", "DPkg::Lock::Timeout=300", "-o", "APT::Get::Assume-Yes=true"),
                        Stream.of(arguments))
                .toList();
        var builder = new ProcessBuilder(command).inheritIO();
        builder.environment().put("DEBIAN_FRONTEND", "noninteractive");
        try {
            var process = builder.start();
            if (!process.waitFor(INSTALLATION_MINUTES, TimeUnit.MINUTES)) {
                process.destroy();
                return false;
            }
            return process.exitValue() == 0;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
