using System.Collections.Immutable;
using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Runtime.CompilerServices;
using System.Xml.Linq;
using Abaxial.Knowledge;
using ArchUnitNET.Loader;
using ArchUnitNET.xUnitV3;
using static ArchUnitNET.Fluent.ArchRuleDefinition;

namespace Abaxial.Tests;

/// <summary>How the library is built, held by its own assembly.</summary>
public sealed class ArchitectureTests
{
    private static readonly Assembly Library = typeof(KnowledgeBase).Assembly;

    private static readonly string[] AnglesOfTheSun = ["Sin", "Cos", "Asin", "Acos", "Atan2"];

    private static readonly ArchUnitNET.Domain.Architecture Built = new ArchLoader().LoadAssemblies(Library).Build();

    [Theory]
    [InlineData("Abaxial.Statistics", "Abaxial.Knowledge")]
    [InlineData("Abaxial.Statistics", "Abaxial.Weighing")]
    [InlineData("Abaxial.Knowledge", "Abaxial.Weighing")]
    [InlineData("Abaxial.Statistics", "Abaxial.Samples")]
    [InlineData("Abaxial.Knowledge", "Abaxial.Samples")]
    [InlineData("Abaxial.Weighing", "Abaxial.Samples")]
    [InlineData("Abaxial.Statistics", "Abaxial.Weather")]
    [InlineData("Abaxial.Knowledge", "Abaxial.Weather")]
    [InlineData("Abaxial.Weighing", "Abaxial.Weather")]
    [InlineData("Abaxial.Knowledge", "Abaxial.Speaking")]
    [InlineData("Abaxial.Weighing", "Abaxial.Speaking")]
    [InlineData("Abaxial.Samples", "Abaxial.Speaking")]
    [InlineData("Abaxial.Weather", "Abaxial.Speaking")]
    [InlineData("Abaxial.Weather", "Abaxial.Knowledge")]
    [InlineData("Abaxial.Weather", "Abaxial.Weighing")]
    [InlineData("Abaxial.Weather", "Abaxial.Samples")]
    public void What_lies_under_something_does_not_know_it(string under, string above) =>
        Types().That().ResideInNamespace(under).Should().NotDependOnAny(Types().That().ResideInNamespace(above)).Check(Built);

    [Fact]
    public void The_library_references_only_the_framework()
    {
        string framework = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        Assert.All(Library.GetReferencedAssemblies(), reference => Assert.True(File.Exists(Path.Combine(framework, $"{reference.Name}.dll")), $"{reference.Name} is not of the framework."));
    }

    [Fact]
    public void No_function_is_called_whose_result_is_not_the_same_everywhere()
    {
        string[] allowed = ["Abs", "Max", "Min", "Floor", "Ceiling", "Sqrt", "ScaleB", "Clamp", "Sign", "Round"];
        Assert.Empty(Called("System", "Math").Except(allowed).Except(AnglesOfTheSun));
        Assert.Empty(Called("System", "MathF"));
        Assert.Empty(Called("System.Numerics", "Vector").Intersect(["Sum", "Dot", "FusedMultiplyAdd", "MultiplyAddEstimate", "Exp", "Log"]));
        Assert.DoesNotContain(MethodsCalled(), call => call.Type.StartsWith("System.Numerics.Tensors", StringComparison.Ordinal));
    }

    [Fact]
    public void Only_the_sun_needs_angles_and_no_answer_rests_on_them()
    {
        var files = Directory.EnumerateFiles(Repository.PathOf("src", "Abaxial"), "*.cs", SearchOption.AllDirectories);
        var users = files.Where(file => AnglesOfTheSun.Any(name => File.ReadAllText(file).Contains($"Math.{name}(", StringComparison.Ordinal)));
        Assert.Equal("Sun.cs", Path.GetFileName(Assert.Single(users)));
        Types().That().HaveFullName("Abaxial.Weather.Sun").Should().Exist().Check(Built);
        Types().That().ResideInNamespace("Abaxial.Weather.Models").Should().NotDependOnAny(Types().That().HaveFullName("Abaxial.Weather.Sun")).Check(Built);
    }

    [Fact]
    public void The_library_has_no_clock_no_chance_and_no_input_or_output()
    {
        string[] never = ["System.Random", "System.TimeProvider", "System.Diagnostics.Stopwatch", "System.Console", "System.IO.File", "System.IO.Directory", "System.IO.FileStream", "System.Net.Http.HttpClient", "System.Threading.Tasks.Task"];
        Assert.Empty(MethodsCalled().Select(call => call.Type).Intersect(never));
        Assert.Empty(Called("System", "Environment").Except(["get_NewLine", "get_CurrentManagedThreadId"])); // of an error's text, and of every iterator
        Assert.Empty(Called("System", "DateTime").Intersect(["get_Now", "get_UtcNow", "get_Today"]));
    }

    [Fact]
    public void Nothing_static_can_change()
    {
        var fields = Library.GetTypes().Where(type => !IsGenerated(type)).SelectMany(type => type.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly)).Where(field => !field.IsLiteral);
        Assert.All(fields.Where(field => field.GetCustomAttribute<CompilerGeneratedAttribute>() is null), field => Assert.True(field.IsInitOnly, $"{field.DeclaringType}.{field.Name} can be set."));
        Assert.All(fields.Where(field => field.IsPublic), field => Assert.True(!field.FieldType.IsArray, $"{field.DeclaringType}.{field.Name} can be changed."));
        var properties = Library.GetExportedTypes().SelectMany(type => type.GetProperties(BindingFlags.Static | BindingFlags.Public | BindingFlags.DeclaredOnly));
        Assert.All(properties, property => Assert.True(!property.CanWrite && !property.PropertyType.IsArray, $"{property.DeclaringType}.{property.Name} can be changed."));
    }

    [Fact]
    public void Public_types_are_sealed_or_static_or_have_kinds_only_here() =>
        Assert.All(Library.GetExportedTypes().Where(type => type.IsClass), type => Assert.True(type.IsSealed || (type.IsAbstract && CanOnlyBeMadeHere(type)), $"{type} can be inherited from."));

    private static bool CanOnlyBeMadeHere(System.Type type) =>
        type.GetConstructors(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic).Where(constructor => constructor.GetParameters().Length == 0).All(constructor => constructor.IsFamilyAndAssembly);

    [Fact]
    public void Every_public_type_but_the_forms_of_stored_documents_is_documented()
    {
        var documented = XDocument.Load(Path.ChangeExtension(Library.Location, ".xml")).Descendants("member").Select(member => member.Attribute("name")!.Value).ToImmutableHashSet();
        var types = Library.GetExportedTypes().Where(type => !type.Name.EndsWith("Document", StringComparison.Ordinal));
        Assert.All(types, type => Assert.True(documented.Contains($"T:{type.FullName!.Replace('+', '.')}"), $"{type} has no documentation."));
    }

    private static bool IsGenerated(System.Type type) => type.Name.Contains('<', StringComparison.Ordinal) || typeof(System.Text.Json.Serialization.JsonSerializerContext).IsAssignableFrom(type);

    private static IEnumerable<string> Called(string space, string type) => MethodsCalled().Where(call => call.Type == $"{space}.{type}").Select(call => call.Method).Distinct();

    /// <summary>Every member of another assembly that the library's code refers to.</summary>
    private static List<(string Type, string Method)> MethodsCalled()
    {
        using var file = new PEReader(File.OpenRead(Library.Location));
        var metadata = file.GetMetadataReader();
        var calls = new List<(string Type, string Method)>();
        foreach (var handle in metadata.MemberReferences)
        {
            var member = metadata.GetMemberReference(handle);
            if (member.Parent.Kind != HandleKind.TypeReference) continue;
            var type = metadata.GetTypeReference((TypeReferenceHandle)member.Parent);
            calls.Add(($"{metadata.GetString(type.Namespace)}.{metadata.GetString(type.Name)}", metadata.GetString(member.Name)));
        }

        return calls;
    }
}
