// Compiles a knowledge folder into the JSON that the library embeds: KnowledgeCompiler FOLDER OUTPUT.
// Problems are printed in the form that builds show with file and line; any problem fails the build.
using Abaxial.Files.Knowledge;

if (args.Length != 2)
{
    Console.Error.WriteLine("Usage: Abaxial.KnowledgeCompiler FOLDER OUTPUT");
    return 64;
}

var result = KnowledgeFolder.Compile(args[0]);
foreach (var problem in result.Problems)
{
    Console.Error.WriteLine($"{Path.GetFullPath(Path.Combine(args[0], problem.File))}({problem.Line}): error KNOWLEDGE: {problem.Found}");
}

if (result.Knowledge is null) return 1;
File.WriteAllBytes(args[1], result.Compiled);
return 0;
