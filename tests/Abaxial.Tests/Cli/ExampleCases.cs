namespace Abaxial.Tests.Cli;

/// <summary>Case files that many tests use.</summary>
internal static class ExampleCases
{
    public const string Septoria =
        """{"format":"abaxial-case/1","host":"tomato","system":"garden","looks":[{"character":"organs-affected","states":["leaf"],"how":"naked-eye","by":"scout"},{"character":"pycnidia","state":"present","how":"hand-lens","by":"diagnostician"}]}""";

    public const string Blackleg =
        """{"format":"abaxial-case/1","host":"potato","system":"field","looks":[{"character":"stem-lesion","states":["black-from-soil-line-up"],"how":"naked-eye","by":"scout"}]}""";

    public const string Nothing = """{"format":"abaxial-case/1","host":"tomato","looks":[]}""";

    /// <summary>Refused: pycnidia have no such state.</summary>
    public const string Ringed = """{"format":"abaxial-case/1","host":"tomato","looks":[{"character":"pycnidia","state":"ringed","how":"hand-lens"}]}""";
}
