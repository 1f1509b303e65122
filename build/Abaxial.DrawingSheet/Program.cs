// Writes docs/drawings.md and the sheets that it shows: Abaxial.DrawingSheet DOCS-FOLDER.
using Abaxial.DrawingSheet;

if (args.Length != 1 || !Directory.Exists(args[0]))
{
    Console.Error.WriteLine("Usage: Abaxial.DrawingSheet DOCS-FOLDER");
    return 64;
}

Directory.CreateDirectory(Path.Combine(args[0], ContactSheet.Folder));
foreach (var (name, text) in ContactSheet.Files()) File.WriteAllText(Path.Combine(args[0], name), text);
return 0;
