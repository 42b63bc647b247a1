package io.github.roundstar.browser;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.openqa.selenium.By;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.Select;

/** Debian's Chromium without a window, with one page open at a time. */
final class Browser implements AutoCloseable {
  /** Tall enough for a screen of any width. */
  private static final int HEIGHT = 900;

  private final ChromeDriver driver;

  Browser() {
    ChromeOptions options = new ChromeOptions();
    options.setBinary("/usr/bin/chromium");
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--hide-scrollbars");
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.BROWSER, java.util.logging.Level.ALL);
    logs.enable(LogType.PERFORMANCE, java.util.logging.Level.ALL);
    options.setCapability("goog:loggingPrefs", logs);
    driver =
        new ChromeDriver(
            new ChromeDriverService.Builder()
                .usingDriverExecutable(Path.of("/usr/bin/chromedriver").toFile())
                .build(),
            options);
  }

  ChromeDriver driver() {
    return driver;
  }

  /**
   * Opens a page as wide as a screen of that many CSS pixels, forgetting what was logged before.
   */
  void open(Path page, int width) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", HEIGHT, "deviceScaleFactor", 1, "mobile", false));
    messages();
    requests();
    driver.get(page.toUri().toString());
  }

  void theme(String name) {
    new Select(driver.findElement(By.id("theme"))).selectByValue(name);
  }

  /** What the page's script returns. */
  Object script(String text, Object... arguments) {
    return driver.executeScript(text, arguments);
  }

  /** Console messages since the last question. */
  List<String> messages() {
    return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
        .map(LogEntry::getMessage)
        .toList();
  }

  /** Addresses asked for since the last question. */
  List<String> requests() {
    return driver.manage().logs().get(LogType.PERFORMANCE).getAll().stream()
        .map(LogEntry::getMessage)
        .filter(message -> message.contains("\"Network.requestWillBeSent\""))
        .map(message -> message.replaceAll("(?s).*?\"url\":\"([^\"]*)\".*", "$1"))
        .toList();
  }

  @Override
  public void close() {
    driver.quit();
  }
}
