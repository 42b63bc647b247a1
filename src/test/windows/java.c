/* Stands for java.exe: prints its arguments in UTF-8, one a line, and ends with 7; tells a version when asked. */
#include <fcntl.h>
#include <io.h>
#include <stdio.h>
#include <stdlib.h>
#include <wchar.h>
#include <windows.h>

int wmain(int argc, wchar_t **argv) {
  if (argc == 2 && wcscmp(argv[1], L"-version") == 0) {
    const char *version = getenv("STAND_IN_VERSION");
    fprintf(stderr, "openjdk version \"%s\" 2024-01-16\n", version ? version : "17.0.15");
    return 0;
  }
  _setmode(_fileno(stdout), _O_BINARY);
  for (int i = 1; i < argc; i++) {
    char text[32768];
    WideCharToMultiByte(CP_UTF8, 0, argv[i], -1, text, sizeof text, NULL, NULL);
    printf("%s\n", text);
  }
  return 7;
}
