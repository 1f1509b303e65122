namespace Abaxial.Knowledge;

/// <summary>The knowledge that was compiled into the program.</summary>
public static class BuiltIn
{
    /// <summary>Reads the knowledge of tomato and potato. Each call reads it anew: keep what it gives.</summary>
    public static KnowledgeBase Solanum() => KnowledgeBase.Read(SolanumBytes()).OrThrow();

    /// <summary>The compiled bytes that <see cref="Solanum"/> reads.</summary>
    public static byte[] SolanumBytes()
    {
        using var stream = typeof(BuiltIn).Assembly.GetManifestResourceStream("solanum.json")
            ?? throw new InvalidOperationException("The build did not embed solanum.json.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
