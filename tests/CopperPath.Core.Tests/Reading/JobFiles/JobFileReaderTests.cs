using System.Text;
using CopperPath.Reading.JobFiles;

namespace CopperPath.Core.Tests.Reading.JobFiles;

/// <summary>Job files by the format digest, section 4: lengths in the file are millimetres.</summary>
public class JobFileReaderTests
{
    [Fact]
    public void StackupComesInMetresFromTopToBottom()
    {
        JobFile job = Job("""
            {"GeneralSpecs":{"LayerNumber":2,"BoardThickness":1.6,"Size":{"X":230.6,"Y":60.1}},
             "MaterialStackup":[{"Type":"SolderMask","Thickness":0.01},{"Type":"Copper","Name":"Top","Thickness":0.035},
              {"Type":"Dielectric","Thickness":1.51,"Material":"FR4","DielectricConstant":4.5},{"Type":"Copper","Thickness":0.035},
              {"Type":"SolderMask","Thickness":0.01}]}
            """);

        job.CopperLayerCount.ShouldBe(2);
        job.BoardThicknessM.ShouldNotBeNull().ShouldBe(1.6e-3, 1e-12);
        job.WidthM.ShouldNotBeNull().ShouldBe(0.2306, 1e-12);
        job.CopperLayers.Select(c => c.ThicknessM).ShouldAllBe(t => Math.Abs(t!.Value - 35e-6) < 1e-15);
        job.Stackup[2].ThicknessM.ShouldNotBeNull().ShouldBe(1.51e-3, 1e-12);
        job.Stackup[2].DielectricConstant.ShouldBe(4.5);
    }

    [Fact]
    public void MissingThicknessStaysUnknown() =>
        Job("""{"MaterialStackup":[{"Type":"Copper","Name":"F.Cu"}]}""").Stackup.ShouldHaveSingleItem().ThicknessM.ShouldBeNull();

    [Theory]
    [InlineData("{\"Header\": {", "b.gbrjob:1:13: warning JOB001: found text that is not JSON; expected a job file in JSON; it is set aside")]
    [InlineData("{\n \"a\": x}", "b.gbrjob:2:7: warning JOB001: found text that is not JSON; expected a job file in JSON; it is set aside")]
    [InlineData("[1,2]", "b.gbrjob: warning JOB001: found JSON that is not an object; expected a job file, starting with {")]
    [InlineData("""{"FilesAttributes":[{"Path":"a.gbr"}]}""", "b.gbrjob: warning JOB002: found a file entry without Path or FileFunction; expected both")]
    [InlineData("""{"FilesAttributes":[{"Path":"../a.gbr","FileFunction":"Profile"}]}""", "b.gbrjob: warning JOB003: found the path '../a.gbr'; expected a plain file name beside the job file; the entry is dropped")]
    [InlineData("""{"FilesAttributes":[{"Path":"C:\\a.gbr","FileFunction":"Profile"}]}""", "b.gbrjob: warning JOB003: found the path 'C:\\a.gbr'; expected a plain file name beside the job file; the entry is dropped")]
    [InlineData("""{"GeneralSpecs":{"BoardThickness":"thick"}}""", "b.gbrjob: warning JOB004: found BoardThickness that is not a number; expected a number; taken as not given")]
    [InlineData("""{"MaterialStackup":[{"Type":"Copper","Thickness":-1}]}""", "b.gbrjob: warning JOB004: found a negative thickness; expected a length in millimetres; taken as not given")]
    [InlineData("""{"GeneralSpecs":{"LayerNumber":4},"MaterialStackup":[{"Type":"Copper"},{"Type":"Copper"}]}""", "b.gbrjob: warning JOB005: found 2 copper layers in the stack-up and LayerNumber 4; expected the two to be equal")]
    [InlineData("""{"GeneralSpecs":{"BoardThickness":1.6},"MaterialStackup":[{"Type":"Copper","Thickness":0.035},{"Type":"Dielectric","Thickness":0.8}]}""", "b.gbrjob: warning JOB006: found layers that add up to 0.835 mm in a board of 1.6 mm; expected the two to agree within 10 %")]
    public void FaultsAreWarnedOf(string text, string expected) =>
        JobFileReader.Read("b.gbrjob", Encoding.UTF8.GetBytes(text)).Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(expected);

    [Fact]
    public void SharedJobFileNamesItsNineFiles()
    {
        string path = SharedData.Require("boards-open", "eez-aux-ps", "EEZ DIB AUX-PS-job.gbrjob");

        JobFileReading reading = JobFileReader.Read(Path.GetFileName(path), File.ReadAllBytes(path));

        reading.Diagnostics.ShouldBeEmpty();
        JobFile job = reading.Job.ShouldNotBeNull();
        job.Files.Count.ShouldBe(9);
        job.CopperLayerCount.ShouldBe(2);
        job.CopperLayers.Count().ShouldBe(2);
        job.CopperLayers.ShouldAllBe(c => c.ThicknessM == null);
    }

    [Fact]
    public void SeededDamageNeverThrows()
    {
        byte[] whole = """{"GeneralSpecs":{"LayerNumber":2,"Size":{"X":1.5}},"FilesAttributes":[{"Path":"a\ud83d\ude00.gbr","FileFunction":"Copper,L1,Top"}],"MaterialStackup":[{"Type":"Copper","Thickness":0.035}]}"""u8.ToArray();
        Random random = new(20260912);
        for (int round = 0; round < 5_000; round++)
        {
            byte[] damaged = [.. whole];
            for (int change = random.Next(1, 4); change > 0; change--)
            {
                damaged[random.Next(damaged.Length)] = (byte)random.Next(256);
            }

            JobFileReading reading = JobFileReader.Read("b.gbrjob", damaged);
            (reading.Job is not null || reading.Diagnostics.Count > 0).ShouldBeTrue();
        }
    }

    private static JobFile Job(string text)
    {
        JobFileReading reading = JobFileReader.Read("b.gbrjob", Encoding.UTF8.GetBytes(text));
        reading.Diagnostics.ShouldBeEmpty();
        return reading.Job.ShouldNotBeNull();
    }
}
