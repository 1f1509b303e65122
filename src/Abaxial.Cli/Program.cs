Console.WriteLine("abaxial");
