# Sourced by run, test and abaxial: finds the .NET 10 SDK or says how to get it. Sets $dotnet.
find_sdk() {
  for candidate in "$(command -v dotnet || true)" "${DOTNET_ROOT:-}/dotnet" "$HOME/.dotnet/dotnet" /usr/share/dotnet/dotnet /usr/lib/dotnet/dotnet; do
    if [ -x "$candidate" ] && "$candidate" --list-sdks 2>/dev/null | grep -q '^10\.0\.'; then
      dotnet=$candidate
      export DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_CLI_UI_LANGUAGE=en
      return 0
    fi
  done
  cat >&2 <<'END'
Abaxial needs the .NET 10 SDK, and it was not found on this machine.
  Get it from the page "Download .NET 10.0" of Microsoft, or from your system: the package dotnet-sdk-10.0.
  If it is installed in an unusual place, set DOTNET_ROOT to that folder and try again.
END
  return 1
}
