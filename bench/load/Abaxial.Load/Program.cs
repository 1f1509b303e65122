using Abaxial.Load;

return args switch
{
    ["storm", var folder] => await WriteStorm.RunAsync(folder),
    ["verify", var folder, var acknowledged] => await StormVerdict.RunAsync(folder, acknowledged),
    ["everything", var folder] => await OneOfEverything.RunAsync(folder),
    ["rate", var folder] => await WriteRate.RunAsync(folder),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("usage: storm FOLDER | verify FOLDER ACKNOWLEDGED | everything FOLDER | rate FOLDER");
    return 64;
}
