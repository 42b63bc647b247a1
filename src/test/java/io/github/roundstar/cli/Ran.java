package io.github.roundstar.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;

/** What a call of the tool gave. */
record Ran(int code, String out, String err) {
  static Ran of(Object... arguments) {
    return with(Browser.NONE, arguments);
  }

  static Ran with(Browser browser, Object... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    String[] words = new String[arguments.length];
    for (int i = 0; i < words.length; i++) {
      words[i] = String.valueOf(arguments[i]);
    }
    int code = Main.run(new PrintWriter(out), new PrintWriter(err), browser, words);
    return new Ran(code, out.toString(), err.toString());
  }

  List<String> outLines() {
    return out.lines().toList();
  }

  List<String> errLines() {
    return err.lines().toList();
  }

  /** Checks the exit code and that nobody is shown the inside of the tool. */
  Ran endsWith(int expected) {
    assertThat(err).doesNotContain("Exception", "\tat ", "roundstar failed");
    assertThat(code).as(err).isEqualTo(expected);
    return this;
  }

  /** Checks for one message of the form {@code file:line: what: how to mend it}. */
  Ran saysOnly(String start) {
    assertThat(errLines()).hasSize(1);
    assertThat(err).startsWith(start);
    assertThat(errLines().get(0)).matches("[^:]+(:\\d+)?: [^:]+.*: [^:]+.*");
    return this;
  }
}
