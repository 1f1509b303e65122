using System.Text.Encodings.Web;
using System.Text.Json;

namespace Abaxial.Weighing;

/// <summary>How the library writes JSON: without white space, text as it is and escaped only where JSON asks for it.</summary>
internal static class JsonForm
{
    public static JsonWriterOptions Writing { get; } = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, SkipValidation = true };
}
