using Abaxial.Load;

return args switch
{
    ["storm", var folder] => await WriteStorm.RunAsync(folder),
    ["verify", var folder, var acknowledged] => await StormVerdict.RunAsync(folder, acknowledged),
    ["photographs", var folder, .. var files] => await PhotographBombs.RunAsync(folder, files),
    ["everything", var folder] => await OneOfEverything.RunAsync(folder),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("usage: storm FOLDER | verify FOLDER ACKNOWLEDGED | everything FOLDER | photographs FOLDER FILE...");
    return 64;
}
