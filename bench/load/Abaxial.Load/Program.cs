using Abaxial.Load;

return args switch
{
    ["storm", var folder] => await WriteStorm.RunAsync(folder),
    ["verify", var folder, var acknowledged] => await StormVerdict.RunAsync(folder, acknowledged),
    ["photographs", var folder, .. var files] => await PhotographBombs.RunAsync(folder, files),
    ["many-photographs", var folder, var jpeg, var count] => await PhotographBombs.RunManyAsync(folder, jpeg, int.Parse(count, System.Globalization.CultureInfo.InvariantCulture)),
    ["everything", var folder] => await OneOfEverything.RunAsync(folder),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("usage: storm FOLDER | verify FOLDER ACKNOWLEDGED | everything FOLDER | photographs FOLDER FILE... | many-photographs FOLDER JPEG COUNT");
    return 64;
}
